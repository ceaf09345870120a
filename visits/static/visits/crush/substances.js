/* What was tried on knives in a laboratory: shown as help, never as what to use.
   Gillespie, Carter, Blowey and Evans, Veterinary Record (2019/20; year and volume from memory): 20 s of contact
   killed the treponemes of digital dermatitis; two other products that they tried did less. Field: the same authors
   with Staton, BMC Veterinary Research 2020, doi 10.1186/s12917-020-02552-8: none alive on knives after disinfection. */

/** Active substances and the strength that was tried, in the order shown. Peroxygen: a peroxymonosulfate powder. */
export const TRIED = [
  { substance: "Iodophor", dilution: "1:100" },
  { substance: "Peroxygen", dilution: "2 % w/v" },
  { substance: "Sodium hypochlorite", dilution: "2 % v/v" },
];

/** Seconds that the knives stood in it. */
export const TRIED_SECONDS = 20;

/** What comes before the bucket is mixed. */
export const FIRST = "Scrub the dirt off first: no disinfectant works through dung.";

/** What to read about what goes into it. */
export const WASH_CAUTIONS = [
  "The product's label and your local rules say which, how strong and how long. Never mix two products.",
  "Gloves and eyes covered; fresh air. Follow the maker's safety sheet.",
];

"""When can you come, timed: `python -m tests.bench.planning.bench_offers`.

Weeks of 60 jobs; each is filled in by regret, then asked for a place for one job more, as a farm would ring up. The
places and their prices must be those of re-timing every order, and with one job moved, those of trying every other
job in every other place. Bars: offers in 10 ms at the median, moves in 50 ms. Kept: what is known of the rounds is
at hand; cold: a page that reads the week anew. Milliseconds of processor time, so that other work on the machine
does not count.
"""

import argparse
import json
import sys
from dataclasses import dataclass, replace
from random import Random
from statistics import median, quantiles
from time import process_time

from tests.bench.planning.made_up_weeks import made_up_week
from tests.visits.domain.planning.offers.standing import by_hand, can_start, every_move, keep_least
from visits.domain.planning.board import Board
from visits.domain.planning.insertion import by_regret
from visits.domain.planning.offers.find_moves import find_moves
from visits.domain.planning.offers.find_offers import find_offers
from visits.domain.planning.offers.guest import board_with
from visits.domain.planning.offers.standing_week import StandingWeek
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.retime import best_timing

JOBS = 60
WEEKS = [(2, 0.45), (2, 0.6), (3, 0.3), (3, 0.45), (3, 0.6)]
ASKED = 8
OFFERS_MS, MOVES_MS = 10.0, 50.0


@dataclass
class Times:
    """Milliseconds of each request."""

    offers_kept: list
    offers_cold: list
    offers_by_hand: list
    moves_kept: list
    moves_cold: list
    moves_by_hand: list


def stood_week(vans, load, seed):
    board = Board(read_problem(json.dumps(made_up_week(JOBS, vans, seed, load))))
    jobs = board.problem.jobs
    order = sorted(range(len(jobs)), key=lambda job: (jobs[job].fixed is None, -jobs[job].length))
    promised = [job for job in order if jobs[job].fixed is not None]
    week = by_regret(board, [() for _ in board.problem.shifts], set(promised))
    return board, by_regret(board, week, set(order) - set(promised))


def asked_job(board, dice):
    """Half of them urgent: few cows, any hour of the first days at a price a day."""
    pattern = dice.choice(board.problem.jobs)
    urgent = dice.random() < 0.5
    cows = dice.randint(1, 4) if urgent else dice.randint(5, 20)
    return replace(
        pattern,
        id="asked",
        cows=cows,
        length=(20 + 6 * cows) * 600,
        crews=None,
        fixed=None,
        leave_out_cost=None,
        late_cost_per_day=6000 if urgent else 500,
    )


def timed(call):
    began = process_time()
    found = call()
    return found, (process_time() - began) * 1000


def ask_once(kept, job, times, thorough):
    """One request, all ways; SystemExit where the places or prices are not those of trying everything."""
    board, week = kept.board, kept.week
    offers, kept_ms = timed(lambda: find_offers(kept, job))
    moves, moves_ms = timed(lambda: find_moves(kept, job))
    cold = StandingWeek(Board(board.problem), week)
    _, cold_ms = timed(lambda: find_offers(cold, job))
    _, cold_moves_ms = timed(lambda: find_moves(cold, job))
    expected, hand_ms = timed(lambda: by_hand(StandingWeek(Board(board.problem), week), job))
    times.offers_kept.append(kept_ms)
    times.offers_cold.append(cold_ms)
    times.offers_by_hand.append(hand_ms)
    times.moves_kept.append(moves_ms)
    times.moves_cold.append(cold_ms + cold_moves_ms)
    same({(o.place.shift, o.place.order): 0 for o in offers}, dict.fromkeys(expected, 0), "places")
    same(least(offers), expected, "prices")
    check_starts(board, job, offers)
    if thorough:
        tried, tried_ms = timed(lambda: every_move(StandingWeek(Board(board.problem), week), job))
        times.moves_by_hand.append(tried_ms)
        same(least_moves(moves), tried, "moves")
    return bool(offers), bool(moves)


def same(found, expected, what):
    if set(found) != set(expected) or any(abs(found[key] - expected[key]) > 1e-6 for key in expected):
        raise SystemExit(f"{what} differ: {len(found)} found, {len(expected)} by trying everything")


def least(offers):
    found = {}
    for each in offers:
        keep_least(found, (each.place.shift, each.place.order), each.added.weight)
    return found


def least_moves(moves):
    found = {}
    for each in moves:
        stays = each.move.to.shift == each.offer.place.shift
        key = each.offer.place.shift, each.offer.place.order, None if stays else each.move.job
        keep_least(found, key, each.offer.added.weight)
    return found


def check_starts(board, job, offers):
    """Every ten minutes of the openings of each place found: a start is in a span exactly if it can be timed."""
    wide, guest = board_with(board, job)
    for shift, order in {(o.place.shift, o.place.order) for o in offers}:
        route, at = wide.route(shift, order), order.index(guest.at)
        spans = [(o.first, o.last) for o in offers if (o.place.shift, o.place.order) == (shift, order)]
        for opening in guest.openings[shift]:
            for start in range(opening.first, opening.last + 1, 6000):
                good = best_timing(can_start(route, at, start)) is not None
                if good != any(first <= start <= last for first, last in spans):
                    raise SystemExit(f"start {start} of shift {shift} is told wrongly")


def line(name, values):
    if not values:
        return f"{name:32} not measured"
    worst = quantiles(values, n=20)[-1] if len(values) > 1 else values[0]
    return f"{name:32} median {median(values):8.2f} ms   95 % {worst:8.2f} ms   of {len(values)}"


def main(words=None):
    """Prints the figures and raises where places are wrong or a bar is missed."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--asked", type=int, default=ASKED, help="requests a week")
    options = parser.parse_args(words if words is not None else [])
    times, fits, moved, asked = Times([], [], [], [], [], []), 0, 0, 0
    for number, (vans, load) in enumerate(WEEKS):
        board, week = stood_week(vans, load, number)
        kept, dice = StandingWeek(board, week), Random(number)
        planned = sum(map(len, week))
        find_moves(kept, asked_job(board, Random("first")))  # from here on the rounds are known
        for one in range(options.asked):
            has_offer, has_move = ask_once(kept, asked_job(board, dice), times, thorough=one < 2)
            fits, moved, asked = fits + has_offer, moved + (has_move and not has_offer), asked + 1
        print(f"week of {planned} jobs planned of {JOBS}, {vans} vans, load {load}", flush=True)
    print(f"{asked} requests: {fits} fit as the week stands, {moved} more with one visit moved")
    for name, values in vars(times).items():
        print(line(name.replace("_", " "), values))
    ratios = (
        median(times.offers_by_hand) / median(times.offers_cold),
        median(times.moves_by_hand) / median(times.moves_cold),
    )
    print(
        f"trying everything takes {ratios[0]:.1f} times as long for offers, {ratios[1]:.1f} times for moves"
    )
    if median(times.offers_kept) > OFFERS_MS or median(times.moves_kept) > MOVES_MS:
        raise SystemExit("slower than the bar")


if __name__ == "__main__":
    main(sys.argv[1:])

"""What a password must be, how often it may be tried, and the forms of the second step."""

PASSWORD_RULES: list[dict[str, object]] = [
    {"NAME": "django.contrib.auth.password_validation.UserAttributeSimilarityValidator"},
    {
        "NAME": "django.contrib.auth.password_validation.MinimumLengthValidator",
        "OPTIONS": {"min_length": 10},
    },
    # Django's 20,000 most used; any composition is taken else, and any length up to what a form may hold (ASVS 6.2).
    {"NAME": "django.contrib.auth.password_validation.CommonPasswordValidator"},
    {"NAME": "trimops.accounts.password_words.HouseWordsValidator"},
]


def password_rules(stolen: str) -> list[dict[str, object]]:
    """With those of a list of stolen ones on this machine, where whoever runs it has named that file."""
    if not stolen:
        return PASSWORD_RULES
    name = "trimops.accounts.stolen_passwords.StolenPasswordsValidator"
    return [*PASSWORD_RULES, {"NAME": name, "OPTIONS": {"file": stolen}}]


# A link to sign in is asked for: how often by one address, how often from one machine; and how often one person of a
# farm leaves a wish, since each is mailed. A wrong password: ten in a quarter of an hour for one address, then that
# address waits, but whoever is signed in stays so, and a passkey or a new password still lets its person in.
# Beside the library's own limits.
RATE_LIMITS = {
    "come_in": "4/h/key",
    "come_in_from": "30/h/ip",
    "leave_wish": "20/d/user",
    "login_failed": "20/m/ip,10/15m/key",
}
FORMS = {
    "add_webauthn": "trimops.accounts.web.second_step_forms.AddPasskey",
    "edit_webauthn": "trimops.accounts.web.second_step_forms.EditPasskey",
    "activate_totp": "trimops.accounts.web.second_step_forms.SetUpApp",
    "login_webauthn": "trimops.accounts.web.second_step_forms.ComeByPasskey",
    "reauthenticate_webauthn": "trimops.accounts.web.second_step_forms.ProveByPasskey",
    "authenticate": "trimops.accounts.web.second_step_forms.GiveCode",
    "reauthenticate": "trimops.accounts.web.second_step_forms.GiveCodeAgain",
}

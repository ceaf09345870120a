"""A passkey device that is no device: Chromium's virtual authenticator, spoken to by the DevTools protocol."""

from playwright.sync_api import CDPSession

from tests.browser.conftest import Site

DEVICE = {
    "protocol": "ctap2",
    "transport": "internal",
    "hasResidentKey": True,
    "hasUserVerification": True,
    "isUserVerified": True,
    "automaticPresenceSimulation": True,
}


class PasskeyDevice:
    """A phone that opens its passkeys with a finger that is always right, until `is_willing` says otherwise."""

    def __init__(self, site: Site) -> None:
        self.wire: CDPSession = site.page.context.new_cdp_session(site.page)
        self.wire.send("WebAuthn.enable")
        made = self.wire.send("WebAuthn.addVirtualAuthenticator", {"options": DEVICE})
        self.which = made["authenticatorId"]

    def keys(self) -> int:
        """How many passkeys it holds."""
        found = self.wire.send("WebAuthn.getCredentials", {"authenticatorId": self.which})
        return len(found["credentials"])

    def forget(self) -> None:
        """As after the phone was wiped."""
        self.wire.send("WebAuthn.clearCredentials", {"authenticatorId": self.which})

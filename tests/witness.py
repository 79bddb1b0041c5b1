"""Hears what goes wrong in a page, from outside it."""

from dataclasses import dataclass, field

from making.splitting import COLD
from playwright.sync_api import ConsoleMessage, Page, Request


@dataclass
class Witness:
    """What went wrong in a page, as seen from outside it."""

    site: str
    faults: list[str] = field(default_factory=list)

    def watch(self, page: Page) -> None:
        """Note every console error and warning, uncaught exception and request to another host."""
        page.on("console", self.console)
        page.on("pageerror", lambda error: self.faults.append(f"uncaught: {error}"))
        page.on("request", self.request)

    def console(self, message: ConsoleMessage) -> None:
        """Note an error or a warning on the console."""
        if message.type in ("error", "warning") and "blocked by Playwright" not in message.text:
            self.faults.append(f"console {message.type}: {message.text} ({message.location.get('url', '')})")

    def request(self, request: Request) -> None:
        """Note a request that leaves the site, and one for Python's cold module: no page may need that."""
        if not request.url.startswith((self.site, "data:", "blob:")):
            self.faults.append(f"request to another host: {request.url}")
        if COLD in request.url:
            self.faults.append(f"a cold load (run `python3 build.py profile --add`): {request.url}")

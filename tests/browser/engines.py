"""Engines other than Chromium, each behind the few things that the contract tests of every page ask of it."""

import json
import os
import shutil
import subprocess
import sys
import time
import warnings
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

import pytest
from making.programs import find_minibrowser
from playwright.sync_api import Playwright
from selenium import webdriver
from selenium.common.exceptions import WebDriverException
from selenium.webdriver.common.actions.action_builder import ActionBuilder
from selenium.webdriver.webkitgtk.options import Options
from selenium.webdriver.webkitgtk.service import Service

LISTENING = """window.faults = [];
addEventListener("error", (event) => window.faults.push(`uncaught: ${event.message}`));
addEventListener("unhandledrejection", (event) => window.faults.push(`rejected: ${event.reason}`));
addEventListener("securitypolicyviolation", (event) => window.faults.push(`refused: ${event.violatedDirective}`));"""
TYPING = """(([name, text]) => {{
  const field = document.querySelector(`[name="${{name}}"]`);
  field.value = text;
  field.dispatchEvent(new Event("input", {{ bubbles: true }}));
  field.dispatchEvent(new Event("change", {{ bubbles: true }}));
}})({})"""


class Engine:
    """One window of an engine: `go` to an address, ask for a `value`, `type` into a field, `wait` for a condition."""

    name: str

    def go(self, address: str) -> None:
        """Open an address anew, and listen for what goes wrong from then on: a driver may give no console."""
        self.clear()
        self.load(address)
        self.run(LISTENING)

    def clear(self) -> None:
        """Leave the page in view for an empty one."""
        self.load("about:blank")

    def load(self, address: str) -> None:
        raise NotImplementedError

    def run(self, script: str) -> None:
        raise NotImplementedError

    def value(self, expression: str) -> Any:
        raise NotImplementedError

    def drag(self, places: Sequence[tuple[float, float]]) -> None:
        """Press the mouse at the first place of the screen, lead it over the others, and let go at the last."""
        raise NotImplementedError

    def type(self, name: str, text: str) -> None:
        """Set a field's text as typing would leave it."""
        self.run(TYPING.format(json.dumps([name, text])))

    def wait(self, expression: str, seconds: float = 90.0) -> None:
        """Poll from outside until an expression holds."""
        end = time.monotonic() + seconds
        while not self.value(f"Boolean({expression})"):
            assert time.monotonic() < end, f"{self.name}: not within {seconds} s: {expression}"
            time.sleep(0.05)

    def faults(self) -> list[str]:
        """What went wrong since the address was opened."""
        return self.value("window.faults")


class Firefox(Engine):
    """Firefox by Playwright."""

    name = "Firefox"

    def __init__(self, playwright: Playwright, home: Path, settings: dict[str, int] | None = None) -> None:
        path = shutil.which("firefox-esr") or shutil.which("firefox")
        _insist(path, self.name, "firefox-esr")
        environment = {**os.environ, "HOME": str(home)}
        self.browser = playwright.firefox.launch(
            channel="moz-firefox", executable_path=path, env=environment, firefox_user_prefs=settings
        )
        self.page = self.browser.new_page()

    def load(self, address: str) -> None:
        self.page.goto(address)

    def run(self, script: str) -> None:
        self.page.evaluate(f"() => {{ {script} }}")

    def value(self, expression: str) -> Any:
        return self.page.evaluate(expression)

    def drag(self, places: Sequence[tuple[float, float]]) -> None:
        (first, *others), mouse = places, self.page.mouse
        mouse.move(*first)
        mouse.down()
        for place in others:
            mouse.move(*place)
        mouse.up()

    def close(self) -> None:
        self.browser.close()


class WebKit(Engine):
    """WebKitGTK by its own driver, on a screen that nobody sees: without a display it hangs."""

    name = "WebKitGTK"

    def __init__(self, home: Path) -> None:
        browser, driver, screen = find_minibrowser(), shutil.which("WebKitWebDriver"), shutil.which("Xvfb")
        _insist(browser and driver and screen, self.name, "webkit2gtk-driver and xvfb")
        reading, writing = os.pipe()
        command = [screen, "-displayfd", str(writing), "-screen", "0", "1280x900x24", "-nolisten", "tcp"]
        self.screen = subprocess.Popen(command, pass_fds=[writing], stderr=subprocess.DEVNULL)
        os.close(writing)
        with os.fdopen(reading) as told:
            display = f":{told.readline().strip()}"
        self.options = Options()
        self.options.binary_location = str(browser)
        self.options.add_argument("--automation")
        self.program = driver
        self.surroundings = {**os.environ, "DISPLAY": display, "HOME": str(home), "XDG_RUNTIME_DIR": str(home)}
        self.driver = self._start()

    def _start(self) -> webdriver.WebKitGTK:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", DeprecationWarning)  # selenium's own, about how it calls itself
            return webdriver.WebKitGTK(options=self.options, service=Service(self.program, env=self.surroundings))

    def clear(self) -> None:
        """A window that broke under the test before is closed: that test failed, the next ones get a new one."""
        try:
            self.load("about:blank")
        except WebDriverException as error:
            print(f"{self.name} was started anew: {error.msg}", file=sys.stderr)
            with suppress(WebDriverException):
                self.driver.quit()
            self.driver = self._start()

    def load(self, address: str) -> None:
        self.driver.get(address)

    def run(self, script: str) -> None:
        self.driver.execute_script(script)

    def value(self, expression: str) -> Any:
        return self.driver.execute_script(f"return {expression}")

    def drag(self, places: Sequence[tuple[float, float]]) -> None:
        (first, *others), actions = places, ActionBuilder(self.driver)
        pointer = actions.pointer_action
        pointer.move_to_location(*map(round, first)).pointer_down()
        for place in others:
            pointer.move_to_location(*map(round, place))
        pointer.pointer_up()
        actions.perform()

    def close(self) -> None:
        self.driver.quit()
        self.screen.terminate()
        self.screen.wait()


def _insist(found: object, engine: str, package: str) -> None:
    """Skip, loudly, where an engine is missing; fail where CI is set."""
    if not found and not os.environ.get("CI"):
        pytest.skip(f"left out: {engine} is not installed, so the pages are not tried in it")
    assert found, f"{engine} is missing and CI is set: install the Debian package {package}"


@contextmanager
def opened(name: str, playwright: Playwright, home: Path) -> Iterator[Engine]:
    """The engine of this name, closed at the end. Its home is its own: the drivers leave caches."""
    engine = Firefox(playwright, home) if name == Firefox.name else WebKit(home)
    yield engine
    engine.close()

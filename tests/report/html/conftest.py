"""A headless Chromium, and pages written to files; without a browser the tests are skipped.

``THRUSTLINE_BROWSER`` names the browser to use; then it must be there.
"""

import os
from pathlib import Path

import axe_playwright_python
import pytest

DEBIAN = "/usr/bin/chromium"
ARGUMENTS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
AXE = (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text(encoding="utf-8")


@pytest.fixture(scope="session")
def browser():
    named = os.environ.get("THRUSTLINE_BROWSER")
    path = named or DEBIAN
    if not Path(path).exists():
        if named:
            pytest.fail(f"THRUSTLINE_BROWSER names {named}, which is not there")
        pytest.skip(f"no browser: {DEBIAN} is not there and THRUSTLINE_BROWSER is not set")
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        launched = playwright.chromium.launch(executable_path=path, args=list(ARGUMENTS))
        yield launched
        launched.close()


class Opened:
    """A page with everything it asked of the network and said on the console."""

    def __init__(self, context, file):
        self.page = context.new_page()
        self.requests = []
        self.said = []
        self.page.route("**/*", self._refuse)
        self.page.on("console", lambda message: self.said.append(message.text))
        self.page.on("pageerror", lambda error: self.said.append(str(error)))
        self.page.goto(file.as_uri())

    def _refuse(self, route):
        if route.request.url.startswith("file:") and route.request.is_navigation_request():
            route.continue_()
            return
        self.requests.append(route.request.url)
        route.abort()

    def overflow(self):
        """How far the page is wider than its window, in CSS pixels."""
        return self.page.evaluate(
            "document.documentElement.scrollWidth - document.documentElement.clientWidth"
        )

    def violations(self):
        """What axe-core objects to: rule and elements."""
        self.page.evaluate(AXE)
        found = self.page.evaluate(
            "axe.run(document, {resultTypes: ['violations']}).then(run => run.violations)"
        )
        return [(each["id"], [node["html"][:200] for node in each["nodes"][:3]]) for each in found]


@pytest.fixture
def opened(browser):
    """Open a file in a window of a width and colour scheme, with or without scripts."""
    contexts = []

    def open_(file, width=1200, scheme="light", scripts=True):
        context = browser.new_context(
            viewport={"width": width, "height": 900},
            color_scheme=scheme,
            java_script_enabled=scripts,
        )
        contexts.append(context)
        return Opened(context, file)

    yield open_
    for context in contexts:
        context.close()

"""The shell of every page: one file with its own style and script, that asks the network nothing.

Pages are templates beside this module that extend ``page.html.j2``. Whatever a template prints is
escaped and made harmless here, in one place, unless it is markup of ours.
"""

import base64
import hashlib
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from checker.report.pictures.palette import DARK, LIGHT
from checker.text import plain

_TEMPLATES = Path(__file__).parent / "templates"


@dataclass(frozen=True, slots=True)
class Section:
    """An entry of the contents.

    Attributes:
        id: of the heading it leads to.
        title: the heading.
    """

    id: str
    title: str


@dataclass(frozen=True, slots=True)
class Shell:
    """What stands at the head of a page.

    Attributes:
        title: of the page and of its first heading.
        kind: what kind of page it is, over the title.
        facts: rows of the title block, label and text.
        contents: the sections, in order; those a page does not have are left out.
    """

    title: str
    kind: str
    facts: tuple[tuple[str, str], ...]
    contents: tuple[Section, ...]


def page(template: str, shell: Shell, **content: object) -> str:
    """Fill a template that extends ``page.html.j2``.

    Args:
        template: its file name.
        shell: title, title block and contents.
        content: what the template itself asks for.
    """
    style, script = _style(), _file("page.js")
    return (
        _environment()
        .get_template(template)
        .render(
            shell=shell,
            policy=_policy(style, script),
            style=Markup(style),
            script=Markup(script),
            **content,
        )
    )


@cache
def _environment() -> Environment:
    environment = Environment(
        loader=FileSystemLoader(_TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=_harmless,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters["markup"] = Markup  # of what is escaped already: a picture
    return environment


def _harmless(value: object) -> object:
    """Text with control and invisible characters spelled out, before it is escaped."""
    return value if isinstance(value, Markup) else plain(str(value))


def _policy(style: str, script: str) -> str:
    """A content security policy that lets this style and this script through and nothing else."""
    return (
        f"default-src 'none'; style-src '{_sha256(style)}'; script-src '{_sha256(script)}'; "
        "base-uri 'none'; form-action 'none'"
    )


def _sha256(text: str) -> str:
    return f"sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}"


@cache
def _style() -> str:
    """The palette as variables, and the style that uses them; paper is always light."""
    dark = f"@media screen and (prefers-color-scheme: dark) {{\n{_variables(DARK)}}}\n"
    return _variables(LIGHT) + dark + _file("page.css")


def _variables(palette: dict[str, str]) -> str:
    lines = "".join(f"  --{name}: {colour};\n" for name, colour in palette.items())
    return f":root {{\n{lines}}}\n"


@cache
def _file(name: str) -> str:
    return (_TEMPLATES / name).read_text(encoding="utf-8")

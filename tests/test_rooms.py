"""Data goes one way: each room imports only the rooms before it, and heavy libraries wait."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

CHECKER = Path(__file__).parents[1] / "checker"
MAY_IMPORT = {
    "mechanics": {"mechanics"},
    "spec": {"mechanics", "spec"},
    "train": {"mechanics", "spec", "train"},
    "solve": {"mechanics", "spec", "train", "solve"},
    "measures": {"mechanics", "spec", "train", "solve", "measures"},
    "review": {"mechanics", "spec", "train", "solve", "measures", "review"},
    "report": {"mechanics", "spec", "train", "solve", "measures", "review", "report"},
}
SHARED = {"known", "text", "shipped"}


def imports_of(file: Path) -> set[str]:
    found = set()
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            found.add(node.module or "")
            found |= {f"{node.module}.{alias.name}" for alias in node.names}
    return found


@pytest.mark.parametrize("file", sorted(CHECKER.rglob("*.py")), ids=lambda file: file.stem)
def test_imports_go_one_way(file):
    room = file.relative_to(CHECKER).parts[0]
    if room not in MAY_IMPORT:
        return
    rooms = {
        name.split(".")[1] for name in imports_of(file) if name.startswith("checker.")
    } - SHARED
    modules = {
        name for name in rooms if (CHECKER / name).is_dir() or (CHECKER / f"{name}.py").exists()
    }
    assert modules <= MAY_IMPORT[room]


def test_mechanics_read_no_files():
    for file in (CHECKER / "mechanics").glob("*.py"):
        tree = ast.parse(file.read_text(encoding="utf-8"))
        called = {
            node.func.id
            for node in ast.walk(tree)
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
        }
        assert "open" not in called, file.name


def formulas_used_by(file: Path) -> set[str]:
    """Functions of the mechanics that a file imports or calls, as ``module.name``."""
    tree = ast.parse(file.read_text(encoding="utf-8"))
    imported, modules = set(), {}
    for node in ast.walk(tree):
        if not isinstance(node, ast.ImportFrom) or node.module is None:
            continue
        for alias in node.names:
            if node.module == "checker.mechanics":
                modules[alias.asname or alias.name] = alias.name
            elif node.module.startswith("checker.mechanics."):
                imported.add(f"{node.module.split('.')[2]}.{alias.name}")
    for node in ast.walk(tree):
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name):
            imported.add(f"{modules.get(node.value.id)}.{node.attr}")
    for definition in tree.body:
        # An argument may be named as the formula that gives it.
        arguments = {node.arg for node in ast.walk(definition) if isinstance(node, ast.arg)}
        names = {node.id for node in ast.walk(definition) if isinstance(node, ast.Name)}
        own = getattr(definition, "name", "")
        imported |= {f"{file.stem}.{name}" for name in names - arguments - {own}}
    return imported


def test_every_formula_is_used_by_the_checker():
    files = list(CHECKER.rglob("*.py"))
    used = set().union(*map(formulas_used_by, files))
    stated = {
        f"{file.stem}.{node.name}"
        for file in (CHECKER / "mechanics").glob("*.py")
        for node in ast.parse(file.read_text(encoding="utf-8")).body
        if isinstance(node, ast.FunctionDef)
    }
    assert stated - used == set()


def test_a_json_review_imports_nothing_heavy():
    code = (
        "import sys, checker.cli\n"
        "status = checker.cli.run(['review', '--format', 'json', 'examples/tansy.yaml'])\n"
        "heavy = {'scipy', 'pint', 'jsonschema', 'rich', 'jinja2'}\n"
        "print(status, sorted(heavy & set(sys.modules)), file=sys.stderr)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, cwd=CHECKER.parent, check=True
    )
    status, _, heavy = done.stderr.strip().partition(" ")
    assert status in ("0", "1")
    assert heavy == "[]"

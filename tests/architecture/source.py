"""The package's modules as syntax trees, and what each of them imports."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
PACKAGE = ROOT / "builder"

FunctionTree = ast.FunctionDef | ast.AsyncFunctionDef


@dataclass(frozen=True, slots=True, kw_only=True)
class Import:
    """One imported name (or module, with no name), and where.

    `lazy` if inside a function, `typing` if only for the type checker.
    """

    target: str
    name: str
    line: int
    lazy: bool
    typing: bool


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Module:
    """One file of the package. `layer` is its folder in `builder/`, or its own name at the top."""

    path: Path
    name: str
    tree: ast.Module
    text: str

    @property
    def layer(self) -> str:
        return layer_of(self.name)

    def at(self, line: int) -> str:
        return f"{self.path.relative_to(ROOT)}:{line}"

    def functions(self) -> Iterator[FunctionTree]:
        return (node for node in self.nodes() if isinstance(node, FunctionTree))

    def attributes(self) -> Iterator[ast.Attribute]:
        return (node for node in self.nodes() if isinstance(node, ast.Attribute))

    def nodes(self) -> tuple[ast.AST, ...]:
        return _nodes(self)

    def public_functions(self) -> list[str]:
        """The doers: functions at the top of the file that others may call."""
        found = (node.name for node in self.tree.body if isinstance(node, FunctionTree))
        return [name for name in found if not name.startswith("_")]

    def imports(self) -> tuple[Import, ...]:
        return _imports(self)

    def find_imports(self) -> Iterator[Import]:
        inside = {node for function in self.functions() for node in ast.walk(function)}
        for_types = {node for branch in self.nodes() if _is_for_types(branch) for node in ast.walk(branch)}
        for node in self.nodes():
            if isinstance(node, ast.Import | ast.ImportFrom):
                for target, name in self._imported(node):
                    yield Import(
                        target=target, name=name, line=node.lineno, lazy=node in inside, typing=node in for_types
                    )

    def _imported(self, node: ast.Import | ast.ImportFrom) -> list[tuple[str, str]]:
        if isinstance(node, ast.Import):
            return [(alias.name, "") for alias in node.names]
        base = self._absolute(node)
        return [
            (f"{base}.{alias.name}", "") if f"{base}.{alias.name}" in names() else (base, alias.name)
            for alias in node.names
        ]

    def _absolute(self, node: ast.ImportFrom) -> str:
        if node.level == 0:
            return node.module or ""
        package = self.name.split(".") if self.path.name == "__init__.py" else self.name.split(".")[:-1]
        kept = package[: len(package) - (node.level - 1)]
        return ".".join([*kept, *([node.module] if node.module else [])])


def layer_of(name: str) -> str:
    """The layer a dotted name belongs to; empty for the package itself."""
    return [*name.split("."), ""][1]


def dotted(path: Path) -> str:
    """The name a file is imported by."""
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


@cache
def names() -> frozenset[str]:
    """The dotted name of every module of the package."""
    return frozenset(dotted(path) for path in PACKAGE.rglob("*.py"))


@cache
def modules() -> tuple[Module, ...]:
    """Every module of the package, by name."""
    return tuple(
        Module(path=path, name=dotted(path), tree=ast.parse(text), text=text)
        for path in sorted(PACKAGE.rglob("*.py"))
        for text in [path.read_text(encoding="utf-8")]
    )


def _is_for_types(node: ast.AST) -> bool:
    return isinstance(node, ast.If) and ast.unparse(node.test).endswith("TYPE_CHECKING")


@cache
def _nodes(module: Module) -> tuple[ast.AST, ...]:
    return tuple(ast.walk(module.tree))


@cache
def _imports(module: Module) -> tuple[Import, ...]:
    return tuple(module.find_imports())


@cache
def module_named(name: str) -> Module:
    """The module of that dotted name, which must be there."""
    return next(module for module in modules() if module.name == name)


def listed(wrong: list[str]) -> str:
    """Everything that is wrong, one a line, for a failing test to show."""
    return "\n".join(["", *wrong])

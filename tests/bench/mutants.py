"""Small changes to a module, each of which some test should notice.

Changed are comparisons, arithmetic, `and` and `or`, `not` and minus, numbers, truth values, words, what is returned,
the order of arguments, `min` and `max`, `any` and `all`; conditions are turned round and statements taken out.
Left alone are docstrings, annotations, decorators, asserts, imports, and the prose that stands at the top of a module
(three words or more: meanings, sources, cautions), which is data.
"""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from types import CodeType
from typing import Any

Put = Callable[[ast.AST], None]  # sets another node in the place of one

_COMPARED: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.In: ast.NotIn, ast.NotIn: ast.In,
}  # fmt: skip
_COUNTED: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.FloorDiv: ast.Div, ast.Mod: ast.Mult,
    ast.Pow: ast.Mult, ast.BitOr: ast.BitAnd, ast.BitAnd: ast.BitOr,
}  # fmt: skip
_CALLED = {"min": "max", "max": "min", "any": "all", "all": "any", "floor": "ceil", "ceil": "floor"}
_TYPES = {"isinstance", "cast", "TypeVar", "NewType"}  # calls whose arguments are types


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """One change: where, what kind, before and after; `statement` are the lines whose tests could notice it."""

    line: int
    column: int
    kind: str
    before: str
    after: str
    function: tuple[str, int] | None
    """The outermost function around it and the line it begins on (its first decorator's); None outside of one."""
    statement: tuple[int, int]
    apply: Callable[[], None]

    @property
    def name(self) -> str:
        """The same in every run while the file is the same."""
        return f"{self.line}:{self.column}:{self.kind}:{self.after}"


def sites(tree: ast.Module) -> list[Site]:
    """Every change that can be made to a module, in the order of its text."""
    walk = _Walk()
    walk.body(tree.body)
    return sorted(walk.found, key=lambda site: (site.line, site.column, site.kind, site.after))


def changed(text: str, filename: str, number: int) -> CodeType:
    """The module with one change made, compiled."""
    tree = ast.parse(text)
    sites(tree)[number].apply()
    return compile(ast.fix_missing_locations(tree), filename, "exec")


class _Walk:
    """Where it is in the module, and what it has found."""

    def __init__(self) -> None:
        self.found: list[Site] = []
        self.function: tuple[str, int] | None = None
        self.classes: list[str] = []
        self.statement = (0, 0)

    def add(self, node: Any, kind: str, after: str, apply: Callable[[], None]) -> None:
        self.found.append(
            Site(
                line=node.lineno,
                column=node.col_offset,
                kind=kind,
                before=_short(node),
                after=after,
                function=self.function,
                statement=self.statement,
                apply=apply,
            )
        )

    def replace(self, node: Any, kind: str, new: ast.AST, put: Put) -> None:
        ast.copy_location(new, node)
        self.add(node, kind, _short(new), lambda: put(new))

    # --- statements

    def body(self, body: list[ast.stmt]) -> None:
        for at, statement in enumerate(body):
            self.one(statement, _into(body, at))

    def one(self, node: ast.stmt, put: Put) -> None:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            self.definition(node)
        elif not isinstance(node, ast.Import | ast.ImportFrom | ast.Assert) and not _is_words(node):
            before, self.statement = self.statement, _header(node)
            self.removed(node, put)
            self.parts(node)
            self.statement = before

    def definition(self, node: ast.FunctionDef | ast.ClassDef) -> None:
        if isinstance(node, ast.ClassDef):
            self.classes.append(node.name)
            self.body(node.body)
            self.classes.pop()
            return
        for default in (*node.args.defaults, *node.args.kw_defaults):
            if default is not None:
                self.default(node, default)
        outer = self.function
        first = min([node.lineno, *(one.lineno for one in node.decorator_list)])
        self.function = outer or (".".join([*self.classes, node.name]), first)
        self.body(node.body)
        self.function = outer

    def default(self, node: ast.FunctionDef, default: ast.expr) -> None:
        before, self.statement = self.statement, (node.lineno, node.body[0].lineno)
        defaults: list[Any] = node.args.defaults if default in node.args.defaults else node.args.kw_defaults
        self.expression(default, _into(defaults, defaults.index(default)))
        self.statement = before

    def removed(self, node: ast.stmt, put: Put) -> None:
        if isinstance(node, ast.Continue | ast.Break):
            other: ast.stmt = ast.Break() if isinstance(node, ast.Continue) else ast.Continue()
            self.replace(node, "jump", other, put)
        if isinstance(node, ast.Expr | ast.AugAssign | ast.Raise) or (
            isinstance(node, ast.Assign) and not isinstance(node.targets[0], ast.Name | ast.Tuple)
        ):
            self.replace(node, "statement", ast.Pass(), put)
        if isinstance(node, ast.Return) and not isinstance(node.value, ast.Constant | None):
            self.replace(node, "return", ast.Return(ast.Constant(None)), put)

    # --- expressions

    def parts(self, node: ast.AST) -> None:
        for field, value in ast.iter_fields(node):
            if field in ("annotation", "returns", "decorator_list", "format_spec", "ctx", "target", "targets"):
                continue
            if isinstance(value, list) and value and isinstance(value[0], ast.stmt):
                self.body(value)
            elif isinstance(value, list):
                for at, one in enumerate(value):
                    self.expression(one, _into(value, at), is_condition=field == "ifs")
            elif isinstance(value, ast.AST):
                self.expression(value, _into_field(node, field), is_condition=field == "test")

    def expression(self, node: Any, put: Put, *, is_condition: bool = False) -> None:
        if not isinstance(node, ast.AST):
            return  # the key of `**more` in a dict
        if is_condition and not isinstance(node, ast.Compare | ast.BoolOp | ast.UnaryOp):
            self.replace(node, "condition", ast.UnaryOp(ast.Not(), node), put)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in _TYPES:
            if node.func.id == "isinstance":
                self.expression(node.args[0], _into(node.args, 0))
            return
        for kind, new in self.changes(node):
            self.replace(node, kind, new, put)
        self.parts(node)

    def changes(self, node: Any) -> Iterator[tuple[str, ast.AST]]:
        if isinstance(node, ast.Constant):
            yield from self.constant(node)
        elif isinstance(node, ast.Compare):
            yield from _comparisons(node)
        elif isinstance(node, ast.BinOp) and type(node.op) in _COUNTED and not self.is_type(node):
            yield "arithmetic", ast.BinOp(node.left, _COUNTED[type(node.op)](), node.right)
        elif isinstance(node, ast.BoolOp):
            yield "boolean", ast.BoolOp(ast.Or() if isinstance(node.op, ast.And) else ast.And(), node.values)
        elif isinstance(node, ast.UnaryOp):
            yield "not" if isinstance(node.op, ast.Not) else "minus", node.operand
        elif isinstance(node, ast.Call):
            yield from _calls(node)

    def is_type(self, node: ast.BinOp) -> bool:
        """`int | Fraction` at the top of a module names a type."""
        return isinstance(node.op, ast.BitOr) and self.function is None

    def constant(self, node: ast.Constant) -> Iterator[tuple[str, ast.AST]]:
        value = node.value
        if isinstance(value, bool):
            yield "constant", ast.Constant(not value)
        elif isinstance(value, int | float):
            yield "constant", ast.Constant(value + 1)
        elif isinstance(value, str) and (self.function is not None or len(value.split()) < 3 or "\\" in value):
            yield "words", ast.Constant(f"XX{value}")


def _comparisons(node: ast.Compare) -> Iterator[tuple[str, ast.AST]]:
    for at, op in enumerate(node.ops):
        ops = [*node.ops[:at], _COMPARED[type(op)](), *node.ops[at + 1 :]]
        yield "comparison", ast.Compare(node.left, ops, node.comparators)


def _calls(node: ast.Call) -> Iterator[tuple[str, ast.AST]]:
    if isinstance(node.func, ast.Name) and node.func.id in _CALLED:
        yield "function", ast.Call(ast.Name(_CALLED[node.func.id], ast.Load()), node.args, node.keywords)
    same_both_ways = isinstance(node.func, ast.Name) and node.func.id in ("min", "max")
    if len(node.args) > 1 and not same_both_ways and not any(isinstance(one, ast.Starred) for one in node.args[:2]):
        first, second, *rest = node.args
        yield "arguments", ast.Call(node.func, [second, first, *rest], node.keywords)


def _into(nodes: list[Any], at: int) -> Put:
    def put(new: ast.AST) -> None:
        nodes[at] = new

    return put


def _into_field(node: ast.AST, field: str) -> Put:
    return lambda new: setattr(node, field, new)


def _is_words(node: ast.stmt) -> bool:
    """Words that stand alone: a docstring, or what a field means."""
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)


def _header(node: ast.stmt) -> tuple[int, int]:
    """The lines of a statement, without what stands in its body."""
    body = getattr(node, "body", None)
    if isinstance(body, list) and body:
        return node.lineno, max(node.lineno, body[0].lineno - 1)
    return node.lineno, node.end_lineno or node.lineno


def _short(node: ast.AST) -> str:
    text = ast.unparse(node).replace("\n", " ")
    return text if len(text) < 100 else f"{text[:97]}..."

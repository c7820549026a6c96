"""List the small faults that can be put into a module."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path

ROOT = Path(__file__).parents[2]
_SWAPPED: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
}
_NUMBER = re.compile(r"\d+(\.\d+)?")
_DEFINITIONS = (ast.FunctionDef, ast.AsyncFunctionDef)
_Definition = ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef
# Parts without numbers or comparisons of the rules; Python 3.11 gives no positions within f-strings.
_SILENT = (ast.JoinedStr, ast.Import, ast.ImportFrom, ast.Raise, ast.Assert)


@dataclass(frozen=True)
class Change:
    """One small fault: the text between two places of a file becomes another text."""

    path: str
    lines: range
    start: int
    end: int
    was: str
    now: str
    function: str | None  # qualified name of the outermost function around it
    names: tuple[str, ...]  # what the statement assigns, outside of functions

    @property
    def place(self) -> str:
        """The function, or the names that are assigned."""
        return self.function or ", ".join(self.names)

    @property
    def line(self) -> int:
        """The last line of the changed place."""
        return self.lines[-1]

    def text(self, root: Path = ROOT) -> str:
        """Return the whole module with the fault."""
        source = (root / self.path).read_bytes()
        return (source[: self.start] + self.now.encode() + source[self.end :]).decode()


class _Finder:
    """Walks through a module. `_scope` is the class around, `_function` the outermost function around."""

    def __init__(self, path: Path, root: Path) -> None:
        self._path = path.relative_to(root).as_posix()
        self._source = path.read_bytes()
        self._begins = [0]
        for line in self._source.splitlines(keepends=True):
            self._begins.append(self._begins[-1] + len(line))
        self._scope = ""
        self._function: str | None = None

    def changes(self) -> Iterator[Change]:
        """Yield every fault of the module."""
        yield from self._statements(ast.parse(self._source).body)

    def _statements(self, nodes: Iterable[ast.stmt]) -> Iterator[Change]:
        for node in nodes:
            if isinstance(node, ast.ClassDef):
                yield from self._within(node, f"{self._scope}{node.name}.", None)
            elif isinstance(node, _DEFINITIONS):
                yield from self._within(node, self._scope, self._function or f"{self._scope}{node.name}")
            elif not isinstance(node, _SILENT) and not _is_text(node):
                yield from self._statement(node)

    def _within(self, node: _Definition, scope: str, function: str | None) -> Iterator[Change]:
        around = self._scope, self._function
        self._scope, self._function = scope, function
        yield from self._statements(node.body)
        self._scope, self._function = around

    def _statement(self, node: ast.stmt) -> Iterator[Change]:
        if self._function and _is_guard(node):
            yield self._change(node, node, "pass")
        yield from self._children(node, node)

    def _children(self, node: ast.AST, statement: ast.stmt) -> Iterator[Change]:
        for name, value in ast.iter_fields(node):
            if name == "annotation":
                continue
            for child in value if isinstance(value, list) else [value]:
                if isinstance(child, ast.stmt):
                    yield from self._statements([child])
                elif isinstance(child, ast.AST) and not isinstance(child, _SILENT):
                    if isinstance(child, ast.expr):
                        yield from (self._change(child, statement, now) for now in _others(child))
                    yield from self._children(child, statement)

    def _change(self, node: ast.expr | ast.stmt, statement: ast.stmt, now: str) -> Change:
        start = self._begins[node.lineno - 1] + node.col_offset
        end = self._begins[(node.end_lineno or node.lineno) - 1] + (node.end_col_offset or 0)
        last = node.lineno if node is statement else node.end_lineno or node.lineno
        names = () if self._function else _targets(statement)
        was = " ".join(self._source[start:end].decode().split())
        lines = range(statement.lineno, last + 1)
        return Change(self._path, lines, start, end, was, now, self._function, names)


def _targets(statement: ast.stmt) -> tuple[str, ...]:
    return tuple(
        node.id
        for node in ast.walk(statement)
        if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store)
    )


def _is_text(node: ast.stmt) -> bool:
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)


def _is_guard(node: ast.stmt) -> bool:
    """Whether it only refuses or ends something, or does something without a result."""
    if isinstance(node, ast.If):
        return not node.orelse and isinstance(node.body[-1], ast.Raise | ast.Return | ast.Continue)
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Call)


def _others(node: ast.expr) -> Iterator[str]:
    """Yield what may stand in an expression's place by mistake."""
    match node:
        case ast.Compare():
            yield from _other_comparisons(node)
        case ast.BoolOp(operator, values):
            other_way = ast.Or() if isinstance(operator, ast.And) else ast.And()
            yield f"({ast.unparse(ast.BoolOp(other_way, values))})"
        case ast.UnaryOp(ast.Not(), operand):
            yield f"({ast.unparse(operand)})"
        case ast.BinOp(left, ast.Add(), right) if not _joins(node):
            yield f"({ast.unparse(ast.BinOp(left, ast.Sub(), right))})"
        case ast.BinOp(left, ast.Sub(), right):
            yield f"({ast.unparse(ast.BinOp(left, ast.Add(), right))})"
        case ast.Constant() | ast.Call():
            yield from _other_numbers(node)


def _other_comparisons(node: ast.Compare) -> Iterator[str]:
    for at, operator in enumerate(node.ops):
        for other in _SWAPPED[type(operator)]:
            operators = [*node.ops[:at], other(), *node.ops[at + 1 :]]
            yield f"({ast.unparse(ast.Compare(node.left, operators, node.comparators))})"


def _other_numbers(node: ast.Constant | ast.Call) -> Iterator[str]:
    match node:
        case ast.Constant(bool()):
            return
        case ast.Constant(int() as number):
            yield from (f"({number + 1})", f"({number - 1})")
        case ast.Constant(float() as number) if number:
            yield from (repr(number * 1.02), repr(number * 0.98))
        case ast.Call(ast.Name("Decimal" | "Fraction" as name), [ast.Constant(str() as text)]):
            if _is_number(text):
                yield from (f'{name}("{Decimal(text) * Decimal(factor)}")' for factor in ("1.02", "0.98"))


def _is_number(text: str) -> bool:
    return bool(_NUMBER.fullmatch(text)) and Decimal(text) != 0


def _joins(node: ast.BinOp) -> bool:
    """Whether texts or lists are joined, so that the other sign is no likely mistake."""
    joined = (ast.JoinedStr, ast.List, ast.ListComp, ast.Tuple)
    return any(
        isinstance(one, joined) or (isinstance(one, ast.Constant) and isinstance(one.value, str))
        for one in (node.left, node.right)
    )


def changes_in(path: Path, root: Path = ROOT) -> Iterator[Change]:
    """Yield every fault of a module."""
    return _Finder(path, root).changes()


def all_changes() -> list[Change]:
    """Return every fault in the rules and use cases, in the order of the files."""
    files = sorted(path for layer in ("trade", "work") for path in (ROOT / "bot" / layer).rglob("*.py"))
    return [change for path in files for change in changes_in(path)]

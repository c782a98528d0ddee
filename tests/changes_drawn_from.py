"""What may be drawn: every change of a module but those that can never change an
answer, each with the reason here.

- How much is remembered, and by which way (`lru_cache`, `remembered`): the
  answer is the same, it only costs more.
- `if TYPE_CHECKING` and annotations: nothing of them runs.
- `strict` of `zip`: two lists of unequal length would be a slip of ours; where
  they are equal it says nothing.
- A slack against rounding of at most a micrometre, made a tenth wider, and `<` for `<=` beside
  such a slack: sizes are typed to the micrometre, so that a size would have to lie within a
  ten-thousandth of a millimetre beyond one. Its sign, and a slack left out, are drawn: a size
  right at its limit tells them apart.
"""

from __future__ import annotations

import ast
from importlib import import_module

from tests.cutting import mutation

#: What remembers; its room is no answer.
_REMEMBER = {"lru_cache", "cache", "remembered", "forgotten_with_the_plan"}
#: The widest slack against rounding [m, or a share].
SLACK = 1e-6


class Sites(mutation._Sites):
    """The changes of one module without those that are the same program."""

    def __init__(self, module: str, tree: ast.Module) -> None:
        self.values = vars(import_module(f"{mutation.PACKAGE}.{module}"))
        super().__init__(module, tree)

    def statement(self, holder, position, node, owner, prefix) -> None:
        if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.unparse(node.test):
            return
        super().statement(holder, position, node, owner, prefix)

    def expressions(self, node, owner, place=None) -> None:
        if isinstance(node, ast.keyword) and node.arg == "strict":
            return
        if isinstance(node, ast.Call) and ast.unparse(node.func).rpartition(".")[2] in _REMEMBER:
            return
        first = len(self.found)
        super().expressions(node, owner, place)
        if isinstance(node, ast.Compare):
            self._without_strictness(node, first)

    def _without_strictness(self, node: ast.Compare, first: int) -> None:
        """Take out `<` for `<=` and the like where a slack stands on either side."""
        sides = [node.left, *node.comparators]
        at, gone = first, []
        for position, operator in enumerate(node.ops):
            if isinstance(operator, ast.Lt | ast.LtE | ast.Gt | ast.GtE) and (
                self._has_slack(sides[position]) or self._has_slack(sides[position + 1])
            ):
                gone.append(at)
            at += len(mutation.COMPARISONS[type(operator)])
        for one in reversed(gone):
            del self.found[one]

    def _has_slack(self, side: ast.expr) -> bool:
        for node in ast.walk(side):
            value = node.value if isinstance(node, ast.Constant) else None
            if isinstance(node, ast.Name):
                value = self.values.get(node.id)
            if isinstance(value, float) and 0 < abs(value) <= SLACK:
                return True
        return False

    def constant(self, node, owner) -> None:
        if isinstance(node.value, float) and 0 < abs(node.value) <= SLACK:
            return
        super().constant(node, owner)


def changes_of(module: str) -> tuple[ast.Module, list[mutation.Mutant]]:
    """The tree of a module and every change that may be drawn of it."""
    tree = ast.parse(mutation.file_of(module).read_text("utf-8"))
    return tree, Sites(module, tree).found

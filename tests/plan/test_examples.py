"""The examples in the docstrings say what happens."""

from __future__ import annotations

import doctest
from types import ModuleType

import pytest

from builder.plan import earned, time_records, variance


@pytest.mark.parametrize("module", [earned, time_records, variance], ids=lambda module: module.__name__)
def test_the_examples_in_the_docstrings_hold(module: ModuleType) -> None:
    """Every one of them, and there is at least one."""
    result = doctest.testmod(module)
    assert result.attempted > 0
    assert result.failed == 0

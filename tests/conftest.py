"""Shared by all tests."""

from __future__ import annotations

from pathlib import Path

import pytest

from saltline_pages.wheel import build_wheel


@pytest.fixture(scope="session")
def compiled_wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The science as the wheel that Pyodide loads, compiled with pyodide-build."""
    return build_wheel(tmp_path_factory.mktemp("wheel"))

"""The text that phones fetch means what the lowered tree means."""

from __future__ import annotations

import ast

import pytest

from saltline_pages.lower import bundle, dense


@pytest.mark.parametrize(
    ("written", "sent"),
    [
        ("a, b = c + 1, d", "a,b=c+1,d"),
        ("x = (a + b) * (c - d)", "x=(a+b)*(c-d)"),
        ("x = ()", "x=()"),
        ("x = (a,)", "x=a,"),
        ("x = [i for i in (1, 2)]", "x=[i for i in (1,2)]"),
        ("def f(a, *, b=1): return (a, f'{a:g}, {b} = ( {a} )')", None),
        ("x = 'it is, a = b' + \"don't, (ever) - or\"", None),
        ("if not -x < 1 and a == b: pass", None),
        ("*a, b = -c, *d", None),
        ("x = lambda a, b=(1, 2): (a, b)", None),
        ("x = 'a\\\\' , 'b , c'", None),
    ],
)
def test_dense_text_says_the_same(written: str, sent: str | None) -> None:
    tree = ast.parse(written)
    text = dense(tree)
    assert ast.dump(ast.parse(text)) == ast.dump(ast.parse(written))
    assert len(text) <= len(ast.unparse(tree)) + 1
    if sent is not None:
        assert text == sent + "\n"


def test_every_module_is_the_same_after_a_second_time() -> None:
    for path, text in bundle({"saltline.answering", "saltline.flush_plan"}).items():
        assert text == "" or dense(ast.parse(text)) == text, path

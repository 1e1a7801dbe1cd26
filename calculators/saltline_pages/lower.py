"""Lower the science to what the light engine (MicroPython) runs.

The science is written as ordinary typed Python. The light engine has no annotations, typing or
docstrings, so those are taken away at build time; nothing that computes is touched.
"""

from __future__ import annotations

import ast
import re
from functools import cache
from pathlib import Path

SCIENCE = Path(__file__).resolve().parent.parent / "saltline"
TYPES_ONLY = {"__future__", "typing", "collections.abc"}
BRACED = re.compile(r"^( *(?:return|.* =)) \((.*)\)$", re.M)
STRING = re.compile(r"""('(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*")""")
SPACED = re.compile(r"(?<![\n ]) ?([-+*/%=<>!,:]+) ?")


class _Lower(ast.NodeTransformer):
    def visit_ImportFrom(self, node: ast.ImportFrom) -> ast.AST | None:
        if node.module == "typing" and any(name.name == "NamedTuple" for name in node.names):
            return ast.ImportFrom("collections", [ast.alias("namedtuple")], 0)
        return None if node.module in TYPES_ONLY else node

    def visit_ClassDef(self, node: ast.ClassDef) -> ast.AST:
        if not any(isinstance(base, ast.Name) and base.id == "NamedTuple" for base in node.bases):
            self.generic_visit(node)
            return _without_docstring(node)
        names = [
            item.target.id
            for item in node.body
            if isinstance(item, ast.AnnAssign) and isinstance(item.target, ast.Name)
        ]
        made = f"{node.name} = namedtuple({node.name!r}, {tuple(names)!r})"
        return ast.parse(made).body[0]

    def visit_FunctionDef(self, node: ast.FunctionDef) -> ast.AST:
        self.generic_visit(node)
        node.returns = None
        return _without_docstring(node)

    def visit_arg(self, node: ast.arg) -> ast.AST:
        node.annotation = None
        return node

    def visit_TypeAlias(self, node: ast.TypeAlias) -> None:
        return None

    def visit_AnnAssign(self, node: ast.AnnAssign) -> ast.AST | None:
        self.generic_visit(node)
        if node.value is None:
            return None
        return ast.copy_location(ast.Assign([node.target], node.value), node)


def _without_docstring[Node: (ast.FunctionDef, ast.ClassDef, ast.Module)](node: Node) -> Node:
    if ast.get_docstring(node, clean=False) is not None:
        node.body = node.body[1:] or [ast.Pass()]
    return node


@cache  # many pages need the same modules
def lower(source: str) -> str:
    """The light engine's text of one module."""
    tree = _without_docstring(ast.parse(source))
    return dense(ast.fix_missing_locations(_Lower().visit(tree)))


def dense(tree: ast.AST) -> str:
    """The text of a module, one space deep and no space within: a phone fetches every one."""
    text = ast.unparse(tree)
    text = re.sub(r"^( {4})+", lambda found: " " * (len(found[0]) // 4), text, flags=re.M) + "\n"
    pieces = STRING.split(BRACED.sub(_bare, text))
    pieces[::2] = [SPACED.sub(r"\1", piece) for piece in pieces[::2]]
    return "".join(pieces)


def _bare(found: re.Match[str]) -> str:
    """`a, b = c, d` without the brackets, with which the light engine would make a tuple."""
    text = f"{found[1]} {found[2]}"
    try:
        same = ast.dump(ast.parse(text.strip())) == ast.dump(ast.parse(found[0].strip()))
    except SyntaxError:
        same = False
    return text if same else found[0]


@cache
def imports(source: str) -> frozenset[str]:
    """The saltline modules that a module imports."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("saltline"):
            module = node.module or ""
            for name in node.names:
                inner = module + "." + name.name
                found.add(inner if path_of(inner).exists() else module)
        elif isinstance(node, ast.Import):
            found |= {name.name for name in node.names if name.name.startswith("saltline.")}
    return frozenset(found)


def path_of(module: str) -> Path:
    """The file of a saltline module (`saltline.words.meter`)."""
    parts = module.split(".")[1:]
    file = SCIENCE.joinpath(*parts)
    return file / "__init__.py" if file.is_dir() else file.with_suffix(".py")


def bundle(modules: set[str]) -> dict[str, str]:
    """Lowered text by path (`saltline/meter.py`) of these modules and all they import."""
    pending, done = set(modules), set[str]()
    texts: dict[str, str] = {}
    while pending:
        module = pending.pop()
        done.add(module)
        source = path_of(module).read_text(encoding="utf-8")
        pending |= imports(source) - done
        texts[path_of(module).relative_to(SCIENCE.parent).as_posix()] = lower(source)
    # Packages on the way to a module; their own text is prose only.
    for path in list(texts):
        for parent in Path(path).parents:
            if parent != Path():
                texts.setdefault((parent / "__init__.py").as_posix(), "")
    return dict(sorted(texts.items()))

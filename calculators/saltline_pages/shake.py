"""Leave out of a page's science what its calculators never call."""

from __future__ import annotations

import ast
from collections.abc import Iterable

from saltline_pages.lower import dense

type Name = tuple[str, str]  # a module, and a name defined or imported in it


def shaken(texts: dict[str, str], roots: Iterable[str]) -> dict[str, str]:
    """The lowered `texts` of a bundle, cut down to what the roots need.

    A root is a function's dotted path, or a module's, which is then kept whole.
    """
    trees = parsed(texts)
    wanted = needed(trees, roots)
    return {path: _cut(trees[_module(path)], _module(path), wanted) for path in texts}


def beside(
    texts: dict[str, str], roots: Iterable[str], had: dict[str, str], first: Iterable[str]
) -> dict[str, str]:
    """What `shaken(texts, roots)` holds beside `shaken(had, first)`, to be run after it.

    A module comes after those it imports.
    """
    trees = parsed(texts)
    begun = needed(parsed(had), first)
    wanted = needed(trees, roots) - begun
    rest = {path: _cut(trees[_module(path)], _module(path), wanted, begun) for path in texts}
    order = [path for path in _in_order(texts) if rest[path]]
    return {path: rest[path] for path in order}


def _in_order(texts: dict[str, str]) -> list[str]:
    """The paths of a bundle, each after what it imports."""
    paths = {_module(path): path for path in texts}
    done: dict[str, None] = {}

    def visit(module: str) -> None:
        path = paths[module]
        if path in done:
            return
        for node in ast.parse(texts[path]).body:
            if isinstance(node, ast.ImportFrom) and node.module in paths:
                visit(node.module)
        done[path] = None

    for module in paths:
        visit(module)
    return list(done)


def parsed(texts: dict[str, str]) -> dict[str, ast.Module]:
    """The modules of a bundle by their dotted names."""
    return {_module(path): ast.parse(text) for path, text in texts.items()}


def _module(path: str) -> str:
    return path.removesuffix(".py").removesuffix("/__init__").replace("/", ".")


def _defined(node: ast.stmt) -> list[str]:
    """The names that a statement of a module gives to it."""
    if isinstance(node, ast.FunctionDef | ast.ClassDef):
        return [node.name]
    if isinstance(node, ast.ImportFrom | ast.Import):
        return [alias.asname or alias.name for alias in node.names]
    if isinstance(node, ast.Assign):
        targets = [part for target in node.targets for part in ast.walk(target)]
        return [part.id for part in targets if isinstance(part, ast.Name)]
    return []


def _used(node: ast.AST) -> set[str]:
    found = {part.id for part in ast.walk(node) if isinstance(part, ast.Name)}
    return found | {part.attr for part in ast.walk(node) if isinstance(part, ast.Attribute)}


def needed(trees: dict[str, ast.Module], roots: Iterable[str]) -> set[Name]:
    """Every name that the roots can come to use."""
    pending: list[Name] = []
    for root in roots:
        if root in trees:
            pending += [(root, name) for node in trees[root].body for name in _defined(node)]
        else:
            module, _, name = root.rpartition(".")
            pending.append((module, name))
    for module, tree in trees.items():  # a statement that defines nothing runs anyway
        for node in tree.body:
            if not _defined(node):
                pending += [(module, name) for name in _used(node)]
    found: set[Name] = set()
    while pending:
        module, name = pending.pop()
        if (module, name) in found or module not in trees:
            continue
        found.add((module, name))
        for node in trees[module].body:
            if name not in _defined(node):
                continue
            if isinstance(node, ast.ImportFrom):
                pending += [
                    (node.module or "", each.name)
                    for each in node.names
                    if (each.asname or each.name) == name
                ]
            else:
                pending += [(module, each) for each in _used(node)]
    return found


def _cut(tree: ast.Module, module: str, wanted: set[Name], begun: set[Name] | None = None) -> str:
    """The statements that give the wanted names, without those that have `begun` the module."""
    had = {name for owner, name in begun or () if owner == module}
    body: list[ast.stmt] = []
    for node in tree.body:
        names = _defined(node)
        kept = [name for name in names if (module, name) in wanted]
        if (names or had) and not kept:
            continue
        if isinstance(node, ast.ImportFrom | ast.Import):
            node.names = [each for each in node.names if (each.asname or each.name) in kept]
        elif had.intersection(names):
            continue
        body.append(node)
    return dense(ast.Module(body, [])) if body else ""

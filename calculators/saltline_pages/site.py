"""The finished site: the generator's pages, then one finishing step that knows no generator.

The step links our own bundles under hashed names, puts the early start of the engine at the top of
each page that calculates, tells search engines what it answers, adds the content security policy,
makes links relative, prints the sheets as PDFs where there is a browser for it, and writes the
service worker that keeps all of it on the reader's device.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import tempfile
from datetime import date
from pathlib import Path

from saltline_pages import bundling, precache, previews, sheets, theme
from saltline_pages.described import described
from saltline_pages.engines import Engine, early_start, with_trust_parts, write_light_engine
from saltline_pages.extension import DOCS
from saltline_pages.extension import ROOT as ROOT_MARK
from saltline_pages.leads import led_on
from saltline_pages.papers import print_all
from saltline_pages.policy import policy
from saltline_pages.tools import browser

PROJECT = Path(__file__).resolve().parent.parent.parent


def build_site(out: Path, site_url: str | None, built: date | None = None) -> None:
    """Write the finished site into `out`; with no `site_url` no absolute address is made.

    `built` is the day that pages give as theirs (today, if not told).
    """
    shutil.rmtree(out, ignore_errors=True)
    generate(out, site_url)
    finish(out, built or date.today())


def generate(out: Path, site_url: str | None, generator: str = "mkdocs") -> None:
    """Run the site generator, in strict mode, on the committed configuration."""
    config = (PROJECT / "mkdocs.yml").read_text(encoding="utf-8")
    config = config.replace("docs_dir: docs", f"docs_dir: {PROJECT / 'docs'}")
    config += f"site_dir: {out}\n"
    if site_url:
        config += f"site_url: {site_url}\n"
    environment = os.environ | {
        "PYTHONPATH": str(PROJECT / "calculators"),
        "NO_MKDOCS_2_WARNING": "1",
        "DISABLE_MKDOCS_2_WARNING": "true",
    }
    with tempfile.TemporaryDirectory() as scratch:
        file = Path(scratch) / "mkdocs.yml"
        file.write_text(config, encoding="utf-8")
        done = subprocess.run(
            [sys.executable, "-m", generator, "build", "--strict", "--quiet", "-f", str(file)],
            env=environment,
            capture_output=True,
            text=True,
            check=False,
        )
    if done.returncode != 0:
        raise RuntimeError(f"{generator} did not build the pages:\n{done.stdout}{done.stderr}")
    if not site_url:
        for empty in out.glob("sitemap.xml*"):
            empty.unlink()


# Our elements and the script of each; a page gets one bundle of those it holds.
SCRIPTS = {
    "salt-article": "salt-article.js",
    "salt-calc": "salt-calc.js",
    "salt-case": "salt-case.js",
    "salt-club": "salt-club.js",
    "salt-experiment": "salt-experiment.js",
    "salt-handout": "salt-handout.js",
    "salt-head": "salt-head.js",
    "salt-key": "salt-key.js",
    "salt-notes": "salt-notes.js",
    "salt-session": "salt-session.js",
    "salt-trust": "salt-trust.js",
}
# Parts of one calculator's form: a file each, so that other pages do not carry them.
APART = {"salt-screens": "salt-screens.js"}


def finish(out: Path, built: date) -> None:
    """The finishing step, on the built HTML."""
    pages = {page: page.read_text(encoding="utf-8") for page in sorted(out.rglob("*.html"))}
    # Without a site address the generator writes the missing page's links from the host's root.
    lost = out / "404.html"
    pages[lost] = re.sub(r'(href="|src="|"base": ")/', r"\1", pages[lost])
    dress = theme.dress(out, pages)
    engine = write_light_engine(out)
    theme.mend_search(out)
    theme.drop_unused(out)
    chromium = browser()
    scripts = bundling.scripts({_scripts(html) for html in pages.values()})
    for page, html in pages.items():
        root = "../" * (len(page.relative_to(out).parts) - 1)
        offered = html if chromium else sheets.without_pdfs(html)
        done = finished(offered, root, dress, engine, scripts[_scripts(html)])
        pages[page] = previews.previewed(done, precache.address(page, out), bool(chromium))
    for page, html in precache.with_feet(pages, out, built).items():
        page.write_text(html, encoding="utf-8")
    if chromium:
        drawn = previews.pictures({precache.address(page, out): pages[page] for page in pages})
        print_all(out, chromium, sheets.names(DOCS), drawn, built)
    else:
        print("No Chromium was found, so the sheets are not made as PDFs.", flush=True)
    precache.write_service_worker(out)


def _scripts(html: str) -> tuple[str, ...]:
    """The scripts of a page."""
    return ("page.js", *(file for tag, file in SCRIPTS.items() if f"<{tag}" in html))


def finished(html: str, root: str, dress: theme.Dress, engine: Engine, text: str) -> str:
    """One page with styles, policy, relative links and the text of its script.

    `root` leads to the site's root.
    """
    for name in bundling.LATER:
        later = bundling.write_hashed(engine.out, Path(name).name, bundling.module(name))
        text = text.replace(name, f"./{Path(later).name}")
    own = bundling.write_hashed(engine.out, "page.js", text.encode())
    run = f'<script async fetchpriority="high" src="{root}{own}"></script>'
    for tag, file in APART.items():
        if f"<{tag}" in html:
            part = bundling.write_hashed(engine.out, file, bundling.module(file))
            run += f'<script type="module" src="{root}{part}"></script>'
    html = with_trust_parts(theme.undressed(html, root, dress), root, engine)
    links = (
        f"{theme.sheet(html, root, dress)}"
        f'<link rel="manifest" href="{root}manifest.webmanifest">'
        f'<link rel="apple-touch-icon" href="{root}assets/icons/icon-180.png">'
        '<meta name="theme-color" content="#fbf9f4" media="(prefers-color-scheme: light)">'
        '<meta name="theme-color" content="#14191b" media="(prefers-color-scheme: dark)">'
    )
    html = html.replace("</head>", f"{links}</head>", 1).replace(ROOT_MARK, root or "./")
    # What watches over our scripts stands before them.
    first = f"<script>{bundling.script('first.js').decode()}</script>{run}"
    html = re.sub(r"<body[^>]*>", lambda body: body[0] + first, html, count=1)
    html = described(led_on(html))
    early = early_start(html, root, engine)
    # The policy must stand before the first script, and its hashes cover every inline one.
    rules = policy(html + early, engine=bool(early) or "<salt-trust" in html)
    head = f'<meta charset="utf-8">{rules}<meta name="referrer" content="no-referrer">{early}'
    return re.sub(r'<meta charset="utf-8">', lambda _: head, html, count=1)

"""Build the site into `site/`, setting up what is missing first.

python3 scripts/build.py [--site-url URL]
"""

import argparse
import sys
import tempfile
import time
from pathlib import Path

import start

SITE = start.ROOT / "site"
BUILD = start.ROOT / "build"


def main() -> None:
    parser = argparse.ArgumentParser(description="Build the site into site/.")
    parser.add_argument(
        "--site-url",
        metavar="URL",
        help="where the site will stand; without it: no sitemap, canonical or preview addresses",
    )
    site_url = parser.parse_args().site_url
    if site_url is not None and not site_url.startswith(("https://", "http://")):
        raise SystemExit(f"--site-url must begin with https:// or http://, not {site_url!r}.")
    start.ready("site", browser=False)
    begun = time.monotonic()
    build(site_url)
    print(f"Built site/ in {time.monotonic() - begun:.1f} s.", flush=True)


def build(site_url: "str | None") -> None:
    """Build beside the finished site and swap, so that `site/` is never half a site."""
    sys.path.append(str(start.ROOT / "calculators"))
    from saltline_pages.site import build_site

    with tempfile.TemporaryDirectory(dir=BUILD) as scratch:
        made = Path(scratch) / "site"
        build_site(made, site_url)
        if SITE.exists():
            SITE.rename(Path(scratch) / "before")
        made.rename(SITE)


if __name__ == "__main__":
    main()

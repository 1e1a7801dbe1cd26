"""Draw the PNG icons from docs/assets/icons/icon.svg, in the browser that the tests use.

python3 scripts/draw_icons.py
"""

import sys

import start

ICONS = start.ROOT / "docs" / "assets" / "icons"
# Name -> pixels; the maskable one fills its square, as phones cut it to their own shape.
SIZES = {"icon-180.png": 180, "icon-192.png": 192, "icon-512.png": 512, "icon-mask-512.png": 512}


def main() -> None:
    start.ready("site", browser=True)
    for name, png in drawn().items():
        (ICONS / name).write_bytes(png)
        print(f"{name}: {len(png) / 1000:.1f} kB")


def drawn() -> "dict[str, bytes]":
    """Each icon as PNG."""
    sys.path.append(str(start.ROOT / "calculators"))
    from playwright.sync_api import sync_playwright

    from saltline_pages.tools import tool

    svg = (ICONS / "icon.svg").read_text(encoding="utf-8")
    with sync_playwright() as started:
        browser = started.chromium.launch(executable_path=tool("chromium"), args=["--no-sandbox"])
        page = browser.new_page()
        icons = {}
        for name, pixels in SIZES.items():
            shape = svg.replace('rx="96"', "") if "mask" in name else svg
            shape = shape.replace("<svg ", f'<svg width="{pixels}" height="{pixels}" ', 1)
            page.set_viewport_size({"width": pixels, "height": pixels})
            page.set_content(f'<body style="margin:0">{shape}')
            icons[name] = page.screenshot(omit_background=True)
        browser.close()
    return icons


if __name__ == "__main__":
    main()

"""Serve the built site over a narrow, slow link: for measurements, or to feel it by hand.

python3 scripts/throttle.py [--link slow|fast] [--port PORT]
"""

import argparse

import start

PORT = 8001


def main() -> None:
    parser = argparse.ArgumentParser(description="Serve the built site over a slow link.")
    parser.add_argument("--link", choices=["slow", "fast"], default="slow")
    parser.add_argument("--port", type=int, default=PORT, help=f"default {PORT}; 0: any free one")
    options = parser.parse_args()
    start.ready("site", browser=False)
    from slow_link import LINKS, SlowServer
    from static_server import Site

    site = start.ROOT / "site"
    if not site.is_dir():
        raise SystemExit("There is no site yet: run python3 scripts/build.py first.")
    link = LINKS[options.link]
    try:
        server = SlowServer(Site(site), link, options.port)
        print(f"Serving {server.address} at {link.kbit_s} kbit/s, {link.delay_s} s a request.")
        print("Ctrl-C stops it.", flush=True)
        server.serve_forever()
    except KeyboardInterrupt:
        print("\nStopped.")


if __name__ == "__main__":
    main()

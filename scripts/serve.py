"""Build the site and serve it on this machine.

python3 scripts/serve.py [--port PORT]
"""

import argparse
import subprocess
import sys

import start

PORT = 8000


def main() -> None:
    parser = argparse.ArgumentParser(description="Build the site and serve it on this machine.")
    parser.add_argument("--port", type=int, default=PORT, help=f"default {PORT}; 0: any free one")
    port = parser.parse_args().port
    start.ready("site", browser=False)
    from static_server import Site, listen

    try:
        build = [sys.executable, str(start.ROOT / "scripts" / "build.py")]
        built = subprocess.run(build, check=False)
        if built.returncode != 0:
            raise SystemExit("The site was not built, so there is nothing to serve.")
        server = listen(Site(start.ROOT / "site"), port)
        if port not in (0, server.server_port):
            print(f"Port {port} is taken.")
        print(f"Serving {server.address} (Ctrl-C stops it)", flush=True)
        server.serve_forever()
    except KeyboardInterrupt:
        print("\nStopped.")


if __name__ == "__main__":
    main()

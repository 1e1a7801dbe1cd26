"""Measure the built pages over a slow link on a slow processor, beside their budgets.

python3 scripts/measure.py [--link slow|fast] [PAGE ...]     PAGE as in care/flush-maths/
"""

import argparse
import subprocess
import sys
import time

import start


def main() -> None:
    parser = argparse.ArgumentParser(description="Measure the pages beside their budgets.")
    parser.add_argument("--link", choices=["slow", "fast"], default="slow")
    parser.add_argument("pages", nargs="*", metavar="PAGE", help="default: every care page")
    options = parser.parse_args()
    start.ready("site", browser=True)
    from answer_times import report_answers
    from floors import compare
    from measuring import pages_that_calculate, report

    begun = time.monotonic()
    build = [sys.executable, str(start.ROOT / "scripts" / "build.py")]
    if subprocess.run(build, check=False).returncode != 0:
        raise SystemExit("The site was not built, so there is nothing to measure.")
    build_s = time.monotonic() - begun
    there = pages_that_calculate(start.ROOT / "site")
    unknown = set(options.pages) - set(there)
    if unknown:
        raise SystemExit(f"No calculator on: {', '.join(sorted(unknown))}. Try {there[0]}")
    try:
        site = start.ROOT / "site"
        compare(site, options.link, report(site, options.pages or there, options.link, build_s))
        report_answers(site)
    except KeyboardInterrupt:
        print("\nStopped.")


if __name__ == "__main__":
    main()

"""Write every file that is made from the declarations and the science, or check that it stands.

python3 scripts/generate.py [--check]
"""

import argparse
import sys

import start


def main() -> None:
    parser = argparse.ArgumentParser(description="Write the derived files.")
    parser.add_argument("--check", action="store_true", help="only say which are out of date")
    check = parser.parse_args().check
    start.ready("site", browser=False)
    sys.path.append(str(start.ROOT / "calculators"))
    from saltline_pages import generated

    found = generated.stale() if check else generated.write()
    for path in found:
        print(("out of date: " if check else "written: ") + str(path.relative_to(start.ROOT)))
    if check and found:
        raise SystemExit("Run this to repair it: " + generated.REPAIR)
    print("All derived files are up to date.")


if __name__ == "__main__":
    main()

"""Set up what is missing and run every check.

python3 scripts/test.py [--full] [-- arguments for pytest]
"""

import argparse
import codecs
import os
import shutil
import subprocess
import sys
import time
from functools import partial
from pathlib import Path

import start

TAIL = 20  # lines of a failed check that are shown again at the end


def main() -> None:
    parser = argparse.ArgumentParser(description="Set up what is missing and run every check.")
    parser.add_argument("--full", action="store_true", help="the long soaks and fuzzing too")
    parser.add_argument("pytest", nargs="*", help="after --, arguments for pytest")
    options = parser.parse_args()
    start.ready("test", browser=True)
    # A build that fails must not leave an older site for the browser tests.
    shutil.rmtree(start.ROOT / "site", ignore_errors=True)
    try:
        done = [run(*check) for check in checks(options.full, options.pytest)]
    except KeyboardInterrupt:
        raise SystemExit("\nStopped.") from None
    summarize(done)
    sys.exit(0 if all(result.passed for result in done) else 1)


def checks(full: bool, extra: "list[str]") -> "list[tuple[str, list[str]]]":
    python, tools = sys.executable, Path(sys.executable).parent
    scripts = sorted(str(path) for path in (start.ROOT / "scripts").glob("*.py"))
    wanted = [] if full else ["-m", "not long"]
    # A process for each core; one that is done takes tests over from another.
    wanted += ["-n", "logical", "--maxprocesses", "4", "--dist", "worksteal"]
    return [
        ("Lint", [str(tools / "ruff"), "check"]),
        ("Format", [str(tools / "ruff"), "format", "--check"]),
        ("Types of the calculators", [str(tools / "mypy")]),
        ("Types of the scripts", [str(tools / "mypy"), *scripts]),
        ("Build, strict", [python, str(start.ROOT / "scripts" / "build.py")]),
        ("Tests", [python, "-m", "pytest", "--durations=8", *wanted, *extra]),
    ]


class Result:
    def __init__(self, name: str, passed: bool, seconds: float, tail: "list[str]") -> None:
        self.name, self.passed, self.seconds, self.tail = name, passed, seconds, tail


def run(name: str, command: "list[str]") -> Result:
    """Run one check, shown as it goes: part of a line at once, as a row of dots takes long."""
    print(f"\n== {name}", flush=True)
    begun = time.monotonic()
    decoder, shown = codecs.getincrementaldecoder("utf-8")("replace"), ""
    with subprocess.Popen(
        command,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        cwd=start.ROOT,
        # Some scripts lean on modules of the tests.
        env={**os.environ, "PYTHONUNBUFFERED": "1", "MYPYPATH": str(start.ROOT / "tests")},
    ) as process:
        assert process.stdout
        for part in iter(partial(os.read, process.stdout.fileno(), 4096), b""):
            text = decoder.decode(part)
            print(text, end="", flush=True)
            shown += text
    tail = shown.rstrip().splitlines()[-TAIL:]
    return Result(name, process.returncode == 0, time.monotonic() - begun, tail)


def summarize(done: "list[Result]") -> None:
    failed = [result for result in done if not result.passed]
    for result in failed:
        print(f"\n-- {result.name} failed; its last lines:")
        print("\n".join(f"   {line}" for line in result.tail))
    print("\n== Summary")
    for result in done:
        verdict = "passed" if result.passed else "FAILED"
        print(f"{verdict}  {result.seconds:6.1f} s  {result.name}")
    print(f"checks: {len(done) - len(failed)} passed, {len(failed)} failed", flush=True)


if __name__ == "__main__":
    main()

"""Run every check of a checkout: lint, types, import rules and the whole suite, windows included.

`python3 packaging/check.py --system-packages [--long | --benchmarks] [-- PYTEST ARGUMENTS]`

An older Python must be able to read this file as far as its sentence, so newer syntax is kept to the modules
it imports.
"""

import sys

if sys.version_info < (3, 11):  # noqa: UP036  it is an older Python that has to be told
    sys.exit(
        "Python 3.11 or newer is needed, but this is {}.{}: start again with a newer one, "
        "for example  python3.12 packaging/check.py".format(*sys.version_info[:2])
    )

import run_checks

if __name__ == "__main__":
    sys.exit(run_checks.main())

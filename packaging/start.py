"""Start the program from a checkout: set up what it needs the first time, then open a job.

`python3 packaging/start.py --system-packages [JOB.yaml]`

An older Python must be able to read this file as far as its sentence, so newer syntax is kept to the modules
it imports.
"""

import sys

if sys.version_info < (3, 11):  # noqa: UP036  it is an older Python that has to be told
    sys.exit(
        "Python 3.11 or newer is needed, but this is {}.{}: start again with a newer one, "
        "for example  python3.12 packaging/start.py".format(*sys.version_info[:2])
    )

import open_program

if __name__ == "__main__":
    sys.exit(open_program.main())

"""What a test needs of Debian's packages. Where one is not installed, the test says so and ctest counts it as skipped."""
import importlib.util
import os
import shutil
import sys

SKIPPED = 77  # as CMakeLists.txt tells ctest


def needed(package, program=None, module=None, path=None):
    """Ends the test as skipped unless the package's program, its module for Python or its file is there."""
    if program:
        there = shutil.which(program)
    else:
        there = importlib.util.find_spec(module) if module else os.path.exists(path)
    if not there:
        print(f"Debian's package {package} is not installed")
        sys.exit(SKIPPED)

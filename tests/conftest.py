"""How the properties are tried: the same cases every time here; `--hypothesis-profile=search` looks for new ones."""

import os

# as bot/__main__ has it, before anything loads numpy: on matrices as small as ours a second thread only waits
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

from hypothesis import settings

settings.register_profile("house", max_examples=60, deadline=None, derandomize=True, print_blob=True)
settings.register_profile("search", max_examples=2000, deadline=None, print_blob=True)
settings.load_profile("house")

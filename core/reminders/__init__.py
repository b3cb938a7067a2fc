"""The delivery round, and the clock that wakes it."""

"""What the program can do: load, decide, save."""

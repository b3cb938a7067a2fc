"""What a person can ask for, and how a text or a tap is read as it."""

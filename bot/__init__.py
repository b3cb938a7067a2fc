"""The conversation: what a person types, what they read, and the channels between."""

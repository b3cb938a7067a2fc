"""What is done, in which order, when, and which reminders that asks for."""

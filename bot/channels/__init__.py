"""The ways to reach people: Telegram and the terminal."""

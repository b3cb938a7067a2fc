"""What the keeper of the bot sees: counts, health, metrics. Nothing of what people say."""

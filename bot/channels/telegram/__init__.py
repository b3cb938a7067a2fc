"""The door to Telegram: it translates, keeps order, paces and delivers, and knows nothing of meat.

`channel.Telegram` is what the composition root builds; the other files are its parts.
"""

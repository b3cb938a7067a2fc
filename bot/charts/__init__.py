"""Pictures: plain data in, PNG bytes out.

`cook.draw`, `cure.draw` and `chill.draw` take facts in the units of the house (`bot/charts/shown.py`), the words
to write on them and the units and zone of the person. The bot has them drawn by a
process of their own (`bot/apart.py`). Whatever is told by colour is told by a line style, a marker or a hatch as well.
"""

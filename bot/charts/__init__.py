"""Pictures: plain data in, PNG bytes out.

`cook.draw`, `cure.draw` and `chill.draw` take facts in the units of the house (`bot/charts/data.py`), the words
to write on them and the units and zone of the person. Drawing takes about a tenth of a second and one core: call
it in a thread. Whatever is told by colour is told by a line style, a marker or a hatch as well.
"""

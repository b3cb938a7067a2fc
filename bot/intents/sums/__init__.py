"""Questions that bring figures of their own: which sum they ask for (`which`), and what they bring along (`told`).

The words say what is wanted (`wanted`, `asked_for`), the figures which sums can be meant at all (`fitting`). The sums
themselves stand in `bot/conversation/sums*.py`. What is under way is read elsewhere: no reader of a batch is imported.
"""

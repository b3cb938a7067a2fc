"""Temperatures as they are told: a line taken apart (`thermometers`), then what each number means (`plausible`).

`readings` puts them together; beside it stand the pairs, series, bounds and guesses, what is wanted and not read
(`set_points`), and the numbers that are the whole of a line (`lone`). What else a line may be is for others to say:
no reader of deeds, starts or questions is imported.
"""

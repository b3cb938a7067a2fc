"""A question of the trade in, the entry that answers it out, or honestly none."""

"""A piece of meat: its cut, mass, thickness, shape and composition."""

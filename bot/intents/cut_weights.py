"""The weight of what is left: trimmed down to it, or a share of a piece whose whole was weighed."""

from core import patterns as re


def trimmed(found: re.Match[str]) -> str:
    """«7.5 lb flat trimmed to 6.8» is a flat of 6.8 lb: what was cut away is not dosed for."""
    kept = float(found["left"]) < float(found["mass"]) < 3 * float(found["left"])
    return f"{found['left']} {found['unit']}{found['of']}" if kept else found[0]


def share(found: re.Match[str]) -> str:
    """«half a 14 lb packer» is 7 lb of it."""
    of = {"half": 2, "a quarter": 4, "a third": 3}[found["part"]]
    return f"{float(found['mass']) / of:.4g} {found['unit']}"

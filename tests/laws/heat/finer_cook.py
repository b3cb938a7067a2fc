"""A finer and different model of the cook, to try the estimator on: it shares no code with core.heat.

Two dimensions (thickness x half the width) with a tapering edge, top and bottom unlike, ends added to
the surface; properties of the local water; water that heat squeezes out of the fibres (holding capacity
falling with temperature, after van der Sman 2007, Meat Science 76:730, from memory) and that seeps to the
surface, slower where the fibres hold it; evaporation by the water activity of the outermost layer and the
crust that its drying leaves; a pit that wanders, dips when the lid is opened and is read by a probe with
its own offset. Explicit in time, all cooks at once.

The estimator's model is one-dimensional with constant properties, and has neither seepage nor activity: its
stall ends by a supply that is used up. TUNED so that the nominal piece takes about as long as COOK_CASE;
a large one in foil at 4 h then takes 8.6 h and a bare one over 13 h (TAMU_BRISKET).
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]

NX, NY = 12, 8  # cells through the thickness, and over half the width
STEP_S = 5.0
KEEP_S = 300.0  # how often the core is kept
SIGMA = 5.670374419e-8
KELVIN = 273.15
DENSITY = 1050.0
LATENT = 2.33e6
FACES = (np.s_[:, 0, :], np.s_[:, -1, :], np.s_[:, :, -1])  # top, bottom, side
FACE_FILM = (1.25, 0.62, 1.13)  # of the mean film


@dataclass(frozen=True, eq=False)
class World:
    """What the cooks truly are; one number a cook."""

    thickness: Array  # thickest part [m]
    mass: Array  # [kg]
    water: Array  # raw mass fraction [-]
    fat: Array
    pit_set: Array  # [°C]
    target: Array  # [°C]
    start: Array
    taper: Array  # share of the thickness lost at the edge
    film: Array  # [W/m2 K] mean; top and bottom are unlike
    radiation: Array  # emissivity x view
    wall: Array  # walls less air [K]
    dew: Array  # [°C]
    skin: Array  # [s/m]
    crust: Array  # [s/m] of a fully dry outermost layer
    dryness: Array  # water per dry matter at which activity falls to 1 - 1/e
    seep: Array  # seepage coefficient of free water [m2/s] at 60 °C
    squeeze_c: Array  # middle of the fall of the holding capacity [°C]
    held: Array  # share of the water still held when hot
    series: Array  # share of the series conductivity
    probe_x: Array  # place of the probe through the thickness, 0.5 is the middle
    pit_offset: Array  # probe of the pit less the true air [K]
    wander: Array  # sd of the pit [K]
    wrap_h: Array  # hours at which it is wrapped in foil, inf never


@dataclass(frozen=True, eq=False)
class Truth:
    """What happened, every 5 minutes: hours, the core at the probe, the pit as its probe shows it. [h, °C]"""

    hours: Array
    core: Array  # times x cooks
    pit: Array
    ready: Array  # hours
    lost: Array  # share of the raw weight by then


@dataclass(frozen=True, eq=False)
class _Piece:
    """Cells of a piece whose thickness falls towards the edge; the width follows from the mass."""

    dx: Array  # cooks x 1 x NY
    dy: Array  # cooks x 1 x 1
    ends: Array  # factor on the surface for the two ends
    length: Array
    depth: tuple[Array, Array, Array]  # of the outermost cells under each face
    volume: tuple[Array, Array, Array]  # of those cells, whole piece [m3]


@dataclass(eq=False)
class _State:
    temp: Array
    water: Array  # per dry matter
    surface: list[Array]
    evaporated: Array  # [kg]
    dripped: Array


@dataclass(frozen=True, eq=False)
class _Local:
    """Properties and rates of the cells at one time."""

    conductivity: Array
    heat: Array
    excess: Array  # water above what the fibres hold
    flow: Array  # heat into each cell [W/m3]
    change: Array  # water into each cell [1/s]


def cook(world: World, seed: int, longest_h: float = 36.0) -> Truth:
    """Run every cook until all are ready, or for the longest time."""
    pit = _pits(world, seed, longest_h)
    piece, state = _piece(world), _start(world)
    every = int(KEEP_S / STEP_S)
    cores: list[Array] = []
    lost: list[Array] = []
    for step in range(int(longest_h * 3600 / STEP_S)):
        if step % every == 0:
            cores.append(_at_probe(world, state.temp))
            lost.append((state.evaporated + state.dripped) / world.mass + _fat_lost(world, cores[-1]))
            if np.all(np.max(cores, axis=0) >= world.target):
                break
        air = pit[int(step * STEP_S // 60)] - world.pit_offset
        _advance(world, piece, state, air, step * STEP_S / 3600 >= world.wrap_h)
    return _told(world, pit, np.array(cores), np.array(lost))


def _told(world: World, pit: Array, core: Array, lost: Array) -> Truth:
    hours = np.arange(len(core)) * KEEP_S / 3600
    highest = np.maximum.accumulate(core)
    ready = np.array([np.interp(t, c, hours) for c, t in zip(highest.T, world.target, strict=True)])
    at = np.minimum((ready * 3600 / KEEP_S).astype(int), len(core) - 1)
    return Truth(hours, core, pit[(hours * 60).astype(int)], ready, lost[at, np.arange(len(ready))])


def _piece(world: World) -> _Piece:
    y = (np.arange(NY) + 0.5) / NY
    local = world.thickness[:, None] * (1 - world.taper[:, None] * y[None, :] ** 2)
    mean = local.mean(axis=1)
    width = np.sqrt(0.58 * world.mass / DENSITY / mean)
    length = width / 0.58
    ends = 1 + width * mean / ((width + mean) * length)
    dx, dy = (local / NX)[:, None, :], (width / 2 / NY)[:, None, None]
    broad = dx[:, 0, :] * dy[:, :, 0] * 2 * length[:, None]
    side = np.repeat(broad[:, -1:], NX, axis=1)
    edge = np.repeat(dy[:, :, 0], NX, axis=1)
    return _Piece(dx, dy, ends, length, (dx[:, 0, :], dx[:, 0, :], edge), (broad, broad, side))


def _start(world: World) -> _State:
    count = len(world.mass)
    temp = np.repeat(world.start, NX * NY).reshape(count, NX, NY)
    water = np.repeat(world.water / (1 - world.water - world.fat), NX * NY).reshape(count, NX, NY)
    return _State(temp, water, [temp[face].copy() for face in FACES], np.zeros(count), np.zeros(count))


def _advance(world: World, piece: _Piece, state: _State, air: Array, foil: Array) -> None:
    local = _inside(world, piece, state)
    dry = DENSITY * (1 - world.water - world.fat)[:, None]
    for number, face in enumerate(FACES):
        gone = _surface(world, piece, state, local, number, air, foil)
        over = np.maximum(local.excess[face] - 0.4, 0.0) / 600.0  # what the surface cannot hold runs off
        local.change[face] -= gone / piece.depth[number] / dry + over
        state.evaporated += STEP_S * (gone / piece.depth[number] * piece.volume[number]).sum(axis=1)
        state.dripped += STEP_S * (over * dry * piece.volume[number]).sum(axis=1)
    state.temp = state.temp + STEP_S * local.flow / local.heat
    state.water = np.maximum(state.water + STEP_S * local.change, 0.02)


def _inside(world: World, piece: _Piece, state: _State) -> _Local:
    dry, fat = (1 - world.water - world.fat)[:, None, None], world.fat[:, None, None]
    wet = state.water * dry
    total = wet + dry + fat
    along = (wet * (0.571 + 1.76e-3 * state.temp) + dry * 0.184 + fat * 0.18) / total
    conductivity = along * (1 - 0.2 * world.series[:, None, None])
    heat = DENSITY * (wet * 4170 + dry * 2050 + fat * 2030)
    excess = state.water - _held(world, state.temp)
    free = 0.15 + 0.85 / (1 + np.exp(-np.clip(excess / 0.15, -30, 30)))  # what the fibres hold seeps slower
    seep = world.seep[:, None, None] * (0.3 + 0.7 * np.clip(state.temp / 60.0, 0, 1.5)) * free
    flow, change = _spread(piece, conductivity, state.temp), _spread(piece, seep, excess)
    return _Local(conductivity, heat, excess, flow, change)


def _spread(piece: _Piece, coefficient: Array, what: Array) -> Array:
    """Divergence of the flow down the gradient: through the thickness, and between columns where they meet."""
    into = np.zeros_like(what)
    through = 0.5 * (coefficient[:, 1:] + coefficient[:, :-1]) * np.diff(what, axis=1) / piece.dx**2
    into[:, :-1] += through
    into[:, 1:] -= through
    meet = np.minimum(piece.dx[:, :, 1:], piece.dx[:, :, :-1])
    across = 0.5 * (coefficient[:, :, 1:] + coefficient[:, :, :-1]) * np.diff(what, axis=2) * meet / piece.dy**2
    into[:, :, :-1] += across / piece.dx[:, :, :-1]
    into[:, :, 1:] -= across / piece.dx[:, :, 1:]
    return into


def _surface(world: World, piece: _Piece, state: _State, local: _Local, number: int, air: Array, foil: Array) -> Array:
    """Newton on the balance of one face; heat goes into its cells, and the water that leaves is returned. [kg/m2 s]"""
    face, depth = FACES[number], piece.depth[number]
    film = (world.film * FACE_FILM[number] * np.where(foil, 0.95, 1.0))[:, None]
    emit = (world.radiation * np.where(foil, 0.25, 1.0))[:, None] * SIGMA
    damp = np.clip(state.water[face] / world.dryness[:, None], 0, 30)
    active = 1 - np.exp(-damp)
    resist = world.skin[:, None] + world.crust[:, None] * np.exp(-damp) + np.where(foil, 4e4, 0.0)[:, None]
    vapour = (_vapour(world.dew) * (world.dew + KELVIN) / (air + KELVIN))[:, None]
    wall = ((air + world.wall)[:, None] + KELVIN) ** 4
    inward = 2 * local.conductivity[face] / depth
    skin = state.surface[number]
    for _ in range(2):
        rho = _vapour(skin)
        stefan = np.maximum(1 - 0.7 * rho * 461.5 * (skin + KELVIN) / 101325, 0.2)
        through = 1.0 / (920.0 / film * stefan + resist)
        gone = through * np.maximum(active * rho - vapour, 0.0)
        miss = film * (air[:, None] - skin) + emit * (wall - (skin + KELVIN) ** 4) - LATENT * gone
        miss -= inward * (skin - state.temp[face])
        slope = film + 4 * emit * (skin + KELVIN) ** 3 + LATENT * through * active * rho * 0.045 + inward
        skin = np.clip(skin + miss / slope, -5.0, 160.0)
    state.surface[number] = skin
    local.flow[face] += inward * (skin - state.temp[face]) / depth * piece.ends[:, None]
    return gone * piece.ends[:, None]


def _held(world: World, temp: Array) -> Array:
    """Water that the fibres hold at a temperature. [kg/kg dry] a smooth fall between two levels."""
    raw = (world.water / (1 - world.water - world.fat))[:, None, None]
    fall = 1 / (1 + np.exp(-0.14 * (temp - world.squeeze_c[:, None, None])))
    return raw * (1 - (1 - world.held[:, None, None]) * fall)


def _vapour(celsius: Array) -> Array:
    """Saturated vapour by Magnus' formula (Sonntag 1990). [kg/m3]"""
    return 611.2 * np.exp(17.62 * celsius / (243.12 + celsius)) / (461.5 * (celsius + KELVIN))


def _fat_lost(world: World, core: Array) -> Array:
    return 0.35 * world.fat / (1 + np.exp(-(core - 72.0) / 8.0))


def _at_probe(world: World, temp: Array) -> Array:
    where = world.probe_x * NX - 0.5
    low = where.astype(int)
    part, who = where - low, np.arange(len(low))
    return (1 - part) * temp[who, low, 0] + part * temp[who, low + 1, 0]


def _pits(world: World, seed: int, longest_h: float) -> Array:
    """What the pit's probe shows, minute by minute: a wander with a memory of 40 min, and lid openings."""
    draw = np.random.default_rng(seed)
    count, minutes = len(world.mass), int(longest_h * 60) + 60
    off = draw.normal(0, 1, count) * world.wander
    slow = draw.normal(0, 0.7, count) * world.wander
    dip = np.full(count, 18.0)
    keep = np.exp(-1 / 40)
    shown = np.empty((minutes, count))
    for minute in range(minutes):
        off = keep * off + np.sqrt(1 - keep**2) * world.wander * draw.normal(0, 1, count)
        opened = draw.random(count) < 1 / 150
        dip = np.maximum(dip * np.exp(-1 / 12), np.where(opened, draw.uniform(10, 35, count), 0.0))
        shown[minute] = world.pit_set + slow + off - dip + world.pit_offset
    return shown


def worlds(count: int, seed: int) -> World:
    """Cooks of flats of all sizes on a ceramic cooker, drawn from wide ranges."""
    draw = np.random.default_rng(seed)

    def log(centre: float, sd: float) -> Array:
        return centre * np.exp(draw.normal(0, sd, count))

    mass = draw.uniform(2.2, 5.5, count)
    water = draw.normal(0.695, 0.015, count)
    return World(
        thickness=0.0339 * mass ** (1 / 3) * np.exp(draw.normal(0, 0.11, count)),
        mass=mass,
        water=water,
        fat=np.clip(0.10 + 0.9 * (0.695 - water), 0.03, 0.2),
        pit_set=draw.choice([110.0, 116.0, 121.0, 121.0, 121.0, 127.0, 135.0], count),
        target=draw.choice([82.0, 85.0, 87.0, 90.0, 93.0], count),
        start=draw.normal(4.5, 1.5, count),
        taper=draw.uniform(0.05, 0.40, count),
        film=log(6.0, 0.2),
        radiation=draw.uniform(0.8, 0.95, count),
        wall=draw.normal(-2.0, 4.0, count),
        dew=draw.normal(36.0, 5.0, count),
        skin=log(220.0, 0.3),
        crust=log(9000.0, 0.3),
        dryness=log(0.28, 0.25),
        seep=log(2.6e-8, 0.3),
        squeeze_c=draw.normal(62.0, 3.0, count),
        held=draw.normal(0.62, 0.05, count),
        series=draw.uniform(0.0, 0.8, count),
        probe_x=np.clip(draw.normal(0.5, 0.06, count), 0.3, 0.7),
        pit_offset=draw.normal(0.0, 4.0, count),
        wander=draw.uniform(1.5, 5.0, count),
        wrap_h=np.full(count, np.inf),
    )


def nominal(**change: float) -> World:
    """One cook with every number at its middle, and those that are told changed."""
    middle = {
        "thickness": 0.0515, "mass": 3.5, "water": 0.695, "fat": 0.099, "pit_set": 121.0, "target": 87.0,
        "start": 4.0, "taper": 0.25, "film": 6.0, "radiation": 0.88, "wall": -2.0, "dew": 36.0, "skin": 220.0,
        "crust": 9000.0, "dryness": 0.28, "seep": 2.6e-8, "squeeze_c": 62.0, "held": 0.62, "series": 0.4,
        "probe_x": 0.5, "pit_offset": 0.0, "wander": 0.0, "wrap_h": np.inf,
    } | change  # fmt: skip
    return World(**{name: np.array([value]) for name, value in middle.items()})

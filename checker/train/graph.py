"""Who turns whom: the tree of shafts from the engine, and the power path to the propeller."""

from dataclasses import dataclass
from typing import Literal

from checker.known import Path
from checker.spec.coupling import Clutch, Damper
from checker.spec.model import Spec

LinkKind = Literal["mesh", "damper", "clutch", "joint"]


@dataclass(frozen=True, slots=True)
class Link:
    """What turns one shaft by another.

    Attributes:
        kind: mesh, damper, clutch or joint.
        name: name of the mesh or joint; the kind itself for damper and clutch.
        path: its place in the spec.
        driver: shaft nearer the engine.
        driven: shaft farther from it.
    """

    kind: LinkKind
    name: str
    path: Path
    driver: str
    driven: str


@dataclass(frozen=True, slots=True)
class Fault:
    """Why the parts do not make a train, with the place that shows it."""

    path: Path
    message: str
    found: str
    expected: str


class TrainUnclear(Exception):
    """The parts do not make one power path from engine to propeller.

    Attributes:
        faults: every reason, with its place in the spec.
    """

    def __init__(self, faults: list[Fault]) -> None:
        super().__init__("; ".join(fault.message for fault in faults))
        self.faults = faults


@dataclass(frozen=True, slots=True)
class Train:
    """The drive as a tree of shafts rooted at the engine.

    Attributes:
        first: shaft that the engine turns.
        last: shaft of the propeller.
        fed_by: link that turns each shaft, but for the first.
        power_path: links from engine to propeller, in order.
        reversals: number of meshes between the engine and each shaft; odd turns against it.
    """

    first: str
    last: str
    fed_by: dict[str, Link]
    power_path: tuple[Link, ...]
    reversals: dict[str, int]

    @property
    def path_shafts(self) -> tuple[str, ...]:
        """The shafts that carry the power, from engine to propeller."""
        return (self.first, *(link.driven for link in self.power_path))

    def before(self, kind: LinkKind, shaft: str) -> bool:
        """Whether a link of this kind lies between the engine and the shaft."""
        return self.upstream_link(kind, shaft) is not None

    def upstream_link(self, kind: LinkKind, shaft: str) -> Link | None:
        """The link of this kind nearest to the shaft on its way to the engine."""
        while shaft in self.fed_by:
            link = self.fed_by[shaft]
            if link.kind == kind:
                return link
            shaft = link.driver
        return None


def build_train(spec: Spec) -> Train:
    """Find who turns whom.

    Raises:
        TrainUnclear: a shaft is driven twice or by nobody, a mesh points back at the engine, or
            the propeller is not reached.
    """
    links = _links(spec)
    faults = [_joins_itself(link) for link in links if link.driver == link.driven]
    links = [link for link in links if link.driver != link.driven]
    fed_by, more = _tree(spec.engine.drives, links)
    faults += more
    faults += [
        Fault(
            ("shafts", name),
            "nobody drives this shaft",
            f"no mesh, damper, clutch or joint that leads to {name!r} from the engine",
            "a way from the engine to every shaft",
        )
        for name in spec.shafts
        if name not in fed_by and name != spec.engine.drives
    ]
    if faults:
        raise TrainUnclear(faults)
    path = []
    reversals = {}
    for name in spec.shafts:
        way = _way_to(name, fed_by)
        reversals[name] = sum(link.kind == "mesh" for link in way)
        if name == spec.propeller.shaft:
            path = way
    return Train(spec.engine.drives, spec.propeller.shaft, fed_by, tuple(path), reversals)


def _links(spec: Spec) -> list[Link]:
    links = [
        Link(
            "mesh",
            name,
            ("meshes", name),
            spec.gears[mesh.driver].shaft,
            spec.gears[mesh.driven].shaft,
        )
        for name, mesh in spec.meshes.items()
    ]
    if isinstance(spec.damper, Damper):
        links.append(Link("damper", "damper", ("damper",), *spec.damper.between[:2]))
    if isinstance(spec.clutch, Clutch):
        links.append(Link("clutch", "clutch", ("clutch",), *spec.clutch.between[:2]))
    links += [
        Link("joint", name, ("joints", name), joint.shaft, joint.to)
        for name, joint in spec.joints.items()
        if joint.to is not None and joint.to in spec.shafts
    ]
    return links


def _joins_itself(link: Link) -> Fault:
    return Fault(
        link.path,
        f"this {link.kind} joins a shaft to itself",
        f"{link.driver!r} on both sides",
        "two different shafts",
    )


def _tree(first: str, links: list[Link]) -> tuple[dict[str, Link], list[Fault]]:
    """Walk from the engine; each shaft is reached once, by a link that points away from it."""
    fed_by: dict[str, Link] = {}
    faults: list[Fault] = []
    reached = [first]
    left = list(links)
    for shaft in reached:
        touching = [link for link in left if shaft in (link.driver, link.driven)]
        left = [link for link in left if link not in touching]
        for link in touching:
            other = link.driven if link.driver == shaft else link.driver
            if other in reached:
                faults.append(
                    Fault(
                        link.path,
                        "the power path closes on itself",
                        f"{other!r} is turned by this {link.kind} and by another way",
                        "one way from the engine to each shaft",
                    )
                )
                continue
            if link.driver != shaft:
                faults.append(
                    Fault(
                        link.path,
                        f"this {link.kind} points back at the engine",
                        f"{link.driver!r} drives {link.driven!r}, which is nearer the engine",
                        "the driving side nearer the engine",
                    )
                )
            fed_by[other] = link
            reached.append(other)
    return fed_by, faults


def _way_to(shaft: str, fed_by: dict[str, Link]) -> list[Link]:
    way = []
    while shaft in fed_by:
        way.append(fed_by[shaft])
        shaft = fed_by[shaft].driver
    return way[::-1]

"""Drawings by others, to be read in: icons and flags of npm packages, fetched once into pytest's cache.

All are under permissive licences, as each package.json says. Only icons of plain things are taken, by the words below;
marks of companies, which some sets hold too, are never touched.
"""

from __future__ import annotations

import base64
import hashlib
import io
import re
import shutil
import tarfile
import urllib.request
from dataclasses import dataclass
from pathlib import Path

REGISTRY = "https://registry.npmjs.org"


@dataclass(frozen=True)
class Package:
    """A package of the npm registry; ``sha512`` is the checksum that the registry publishes for its archive."""

    name: str
    version: str
    licence: str
    sha512: str

    @property
    def url(self) -> str:
        return f"{REGISTRY}/{self.name}/-/{self.name.rpartition('/')[2]}-{self.version}.tgz"


PACKAGES = (
    Package(
        "feather-icons",
        "4.29.2",
        "MIT",
        "0TaCFTnBTVCz6U+baY2UJNKne5ifGh7sMG4ZC2LoBWCZdIyPa+y6UiR4lEYGws1JOFWdee8KAsAIvu0VcXqiqA==",
    ),
    Package(
        "lucide-static",
        "1.62.0",
        "ISC",
        "WBZA/m2PvkFpMGHDtsBck5P2A9G4ehLlYu4GwwICcmEm1BvYVgj00lCDxKRWLlbMlOibLaiwdQ88G5pHkSWgwA==",
    ),
    Package(
        "heroicons",
        "2.2.0",
        "MIT",
        "yOwvztmNiBWqR946t+JdgZmyzEmnRMC2nxvHFC90bF1SUttwB6yJKYeme1JeEcBfobdOs827nCyiWBS2z/brog==",
    ),
    Package(
        "@mapbox/maki",
        "8.2.0",
        "CC0-1.0",
        "sTd/fEBfkBSidVwwtbijHZYJC7NhqvgLrXzSRHgxbLi52x4IciyTVUufqvJr8oIChw7hT7MIBHu5fyqrrpfFdA==",
    ),
    Package(
        "@rapideditor/temaki",
        "5.13.0",
        "CC0-1.0",
        "XiNmm2omwp9UVeJi2QWEz7FpyRUEwhiUSfN/s3POazkzB+6vz8JM88YBGNIHA1DCtcEA3J2WR7YcfgKYE05pug==",
    ),
    Package(
        "flag-icons",
        "7.5.0",
        "MIT",
        "kd+MNXviFIg5hijH766tt+3x76ele1AXlo4zDdCxIvqWZhKt4T83bOtxUOOMlTx/EcFdUMH5yvQgYlFh1EqqFg==",
    ),
)


@dataclass(frozen=True)
class IconSet:
    """Icons of one kind: where they lie, and how many of them are taken."""

    name: str
    folder: str
    count: int


ICON_SETS = (
    IconSet("lines, feather", "feather-icons/dist/icons", 80),
    IconSet("lines, lucide", "lucide-static/icons", 90),
    IconSet("lines, heroicons", "heroicons/24/outline", 40),
    IconSet("areas, heroicons", "heroicons/24/solid", 40),
    IconSet("areas, maki", "@mapbox/maki/icons", 60),
    IconSet("areas, temaki", "@rapideditor/temaki/icons", 80),
)

PLAIN_THINGS = re.compile(
    r"^(airport|align|anchor|archive|arrow|barrier|battery|bed|bell|bench|bicycle|boat|bolt|book|bookmark|box|bridge|bus"
    r"|cable|calendar|camera|car|castle|cemetery|check|chevron|circle|clock|cloud|cog|compass|corner|crop|cross|crown"
    r"|dam|diamond|dice|door|droplet|edit|eye|factory|farm|fence|ferry|file|film|filter|fire|fish|flag|flower|folder"
    r"|fuel|garden|gate|gear|gift|globe|grid|hammer|harbor|heart|hexagon|home|hospital|house|key|landmark|leaf|letter"
    r"|lighthouse|lock|mail|map|mask|minus|moon|mountain|octagon|park|pen|pencil|phone|picnic|pillar|pine|plant|plus"
    r"|power|rail|ramp|ring|road|rocket|ruler|school|scissors|shield|ship|shop|silo|slash|snow|square|stairs|star|storage"
    r"|sun|table|tag|telescope|tent|thermometer|tool|tower|train|tram|tree|triangle|trophy|truck|tunnel|umbrella|utility"
    r"|wall|warehouse|water|wheel|wind|windmill|wrench|zap)(?=$|[-_])"
)

PLAIN_FLAGS = (
    "bs",
    "bw",
    "ch",
    "cz",
    "dk",
    "fi",
    "gr",
    "is",
    "jm",
    "jo",
    "jp",
    "kw",
    "la",
    "no",
    "se",
    "th",
    "tt",
    "tz",
)


def fetch(cache: Path) -> Path:
    """The folder with all packages; those that the cache does not hold in these versions yet are fetched."""
    for package in PACKAGES:
        folder = cache / package.name
        stamp = folder / "version.txt"
        if not stamp.is_file() or stamp.read_text() != package.version:
            shutil.rmtree(folder, ignore_errors=True)
            _unpack(_fetched(package), folder)
            stamp.write_text(package.version)
    return cache


def _fetched(package: Package) -> bytes:
    with urllib.request.urlopen(package.url, timeout=60) as answer:
        archive: bytes = answer.read()
    found = base64.b64encode(hashlib.sha512(archive).digest()).decode()
    assert found == package.sha512, f"{package.url} is not the archive that was published"
    return archive


def _unpack(archive: bytes, folder: Path) -> None:
    """The drawings, and the package.json that says what may be done with them."""
    with tarfile.open(fileobj=io.BytesIO(archive)) as packed:
        for member in packed.getmembers():
            inside = Path(*Path(member.name).parts[1:])
            if member.isfile() and (inside.suffix == ".svg" or str(inside) == "package.json"):
                place = folder / inside
                place.parent.mkdir(parents=True, exist_ok=True)
                place.write_bytes(packed.extractfile(member).read())


def icons(packages: Path, icon_set: IconSet) -> list[Path]:
    """The icons of plain things of a set, evenly picked."""
    plain = [path for path in sorted((packages / icon_set.folder).glob("*.svg")) if PLAIN_THINGS.match(path.stem)]
    step = max(1, len(plain) // icon_set.count)
    return plain[::step][: icon_set.count]


def flags(packages: Path) -> list[Path]:
    """A few flags of countries, drawn in several colours that lie over one another."""
    return [packages / "flag-icons/flags/4x3" / f"{code}.svg" for code in PLAIN_FLAGS]

"""What a printer file says, in millimetres."""

from __future__ import annotations

from typing import cast

from heraldry.describe.description import Description
from heraldry.describe.models import Printer
from heraldry.errors import DescriptionError
from heraldry.resolve.ledger import Ledger
from heraldry.resolve.limits import PrinterLimits
from heraldry.resolve.yardstick import Yardstick
from heraldry.units import Ruler


def printer_of(description: Description) -> PrinterLimits:
    """The limits of a described printer; raises DescriptionError for any other kind of file, or no sizes."""
    if description.kind != "printer":
        what = f"a {description.kind} is no printer"
        raise DescriptionError([description.fault(("kind",), what, wanted='name a file with kind = "printer"')])
    model = cast(Printer, description.model)
    yardstick, ledger = Yardstick({}, Ruler(model.unit)), Ledger()
    sizes = {}
    for key in ("finest_line", "finest_gap"):
        with ledger.at(description, (key,)):
            sizes[key] = yardstick.length_mm(getattr(model, key))
            if sizes[key] <= 0:
                ledger.add(description, (key,), "must be more than 0", f"{sizes[key]:g} mm")
    ledger.settle()
    return PrinterLimits(model.name, sizes["finest_line"], sizes["finest_gap"])

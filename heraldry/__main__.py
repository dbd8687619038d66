"""``python -m heraldry``."""

from heraldry.cli.main import main

main()

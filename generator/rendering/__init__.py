"""From the library and the day's numbers to Markdown pages and phone data. HTML is written in templates/ only."""

from generator.rendering.site import Rendered, render_site
from generator.telling.edition import Edition

__all__ = ["Edition", "Rendered", "render_site"]

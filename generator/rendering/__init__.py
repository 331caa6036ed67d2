"""From the library and the day's numbers to Markdown pages and phone data. HTML is written in templates/ only."""

from generator.rendering.edition import Edition
from generator.rendering.site import Rendered, render_site

__all__ = ["Edition", "Rendered", "render_site"]

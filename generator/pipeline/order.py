"""What to build, and where."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

HERE = Path(__file__).resolve().parents[2]
SETTINGS = HERE / "mkdocs.yml"
OVERRIDES = HERE / "site_overrides"
CHANGES = HERE / "CHANGELOG.md"
PACKAGES = HERE / "requirements" / "serve.lock"
GENERATOR = HERE / "generator"


@dataclass(frozen=True)
class Order:
    """Which content, for which farm, into which folder."""

    content: Path
    """Holds `shared`, and `farms` with one folder a farm."""
    into: Path
    own: Path | None = None
    """The farm's folder where it lies elsewhere."""
    remembered: Path | None = None
    """Where several orders keep what they can use of each other."""

    @property
    def shared(self) -> Path:
        """The content that all farms share."""
        return self.content / "shared"

    @property
    def farm(self) -> Path:
        """The farm's overlay: its own folder, else the demonstration farm, else the only farm there is."""
        if self.own is not None:
            return self.own
        demo = self.content / "farms" / "demo"
        farms = sorted(path for path in demo.parent.glob("*") if path.is_dir())
        return farms[0] if len(farms) == 1 else demo

    @property
    def site(self) -> Path:
        """The finished site."""
        return self.into / "site"

    @property
    def docs(self) -> Path:
        """The pages as Markdown, before the site engine."""
        return self.into / "docs"

    @property
    def mark(self) -> Path:
        """What the finished site was built from."""
        return self.into / "built.json"

    @property
    def memory(self) -> Path:
        """The sizes of units, kept because asking the unit library takes long."""
        return (self.remembered or self.into) / "units.json"

    @property
    def papers(self) -> Path:
        """Papers as they were set before, by what they were set from."""
        return (self.remembered or self.into) / "papers"

    @property
    def templates(self) -> Path:
        """Templates as the Python that they become."""
        return (self.remembered or self.into) / "templates"

    @property
    def looks(self) -> Path:
        """Style sheets as they were trimmed before."""
        return (self.remembered or self.into) / "looks"

    @property
    def preview(self) -> Order:
        """The same order for an author's preview, in a folder of its own."""
        return replace(self, into=self.into / "preview")

    @property
    def written(self) -> tuple[Path, ...]:
        """The files and folders that authors write in."""
        return (self.shared, self.farm, OVERRIDES, SETTINGS)

    @property
    def inputs(self) -> tuple[Path, ...]:
        """All files and folders that a build reads."""
        return (*self.written, GENERATOR, CHANGES, PACKAGES)

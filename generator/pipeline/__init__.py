"""What the commands do, as stories over the rooms below."""

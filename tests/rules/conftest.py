from tests.workshop import workshop

__all__ = ["workshop"]

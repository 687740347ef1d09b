"""What is said of a document that cannot be read."""

from __future__ import annotations


class Unreadable(Exception):
    """A document that cannot be read; the message goes on from its name: "is protected by a password"."""

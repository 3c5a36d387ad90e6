"""Writing: pages through their templates, photos, feed, the site folder, the preview server."""

from __future__ import annotations

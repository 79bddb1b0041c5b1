"""A picture in the place of a photograph from straight above (host/piles.py)."""

import io

from PIL import Image, ImageDraw


def jpeg(shade: int = 190) -> bytes:
    """A photograph of plain paper."""
    picture = Image.new("RGB", (1188, 840), (shade, shade, shade))
    ImageDraw.Draw(picture).ellipse((500, 300, 700, 500), outline=(80, 80, 80), width=3)
    data = io.BytesIO()
    picture.save(data, "JPEG", quality=80)
    return data.getvalue()

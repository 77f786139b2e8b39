#!/usr/bin/env python3
"""Writes turned and profiled pictures by Pillow, and says how Pillow shows them.

usage: make_photographs.py FOLDER   prints, for each file, a line NAME WIDTH HEIGHT and the pixels as #rrggbb
"""
import io
import os
import struct
import sys

from PIL import Image, ImageCms, ImageOps

ORIENTATION = 0x0112  # Exif 2.3, section 4.6.4


def painting():
    picture = Image.new('RGB', (24, 16))
    picture.putdata([(x * 11, y * 17, (x + y) * 6) for y in range(16) for x in range(24)])
    return picture


def fixed(value):
    return struct.pack('>i', round(value * 65536))


def matrix_profile(gamma, colorants):
    """The least that ICC.1:2001-04 asks of a display profile: three colorants (D50) and a gamma."""
    xyz = b'XYZ ' + bytes(4)
    tags = {b'desc': b'desc' + bytes(4) + struct.pack('>I', 5) + b'wide\0' + bytes(78),
            b'cprt': b'text' + bytes(4) + b'none\0',
            b'wtpt': xyz + fixed(0.9642) + fixed(1) + fixed(0.8249)}
    for letter, colorant in zip(b'rgb', colorants):
        tags[bytes([letter]) + b'XYZ'] = xyz + b''.join(map(fixed, colorant))
        tags[bytes([letter]) + b'TRC'] = b'curv' + bytes(4) + struct.pack('>IH', 1, round(gamma * 256))
    place, table, data = 132 + 12 * len(tags), struct.pack('>I', len(tags)), b''
    for name, body in tags.items():
        table += name + struct.pack('>II', place + len(data), len(body))
        data += body + bytes(-len(body) % 4)
    header = struct.pack('>I4sI4s4s4s', place + len(data), bytes(4), 0x02100000, b'mntr', b'RGB ', b'XYZ ')
    header += struct.pack('>6H4s', 2001, 4, 1, 0, 0, 0, b'acsp') + bytes(28)
    header += fixed(0.9642) + fixed(1) + fixed(0.8249) + bytes(48)
    return header + table + data


# Wider than sRGB in red and green.
WIDE = matrix_profile(1.8, ((0.5151, 0.2412, -0.0011), (0.2920, 0.6922, 0.0419), (0.1571, 0.0666, 0.7841)))
SAME = ImageCms.ImageCmsProfile(ImageCms.createProfile('sRGB')).tobytes()


def show(path, picture):
    pixels = ' '.join('#%02x%02x%02x' % pixel for pixel in picture.convert('RGB').getdata())
    print(os.path.basename(path), *picture.size, pixels)


def main():
    folder = sys.argv[1]
    painted = painting()
    for orientation in range(1, 9):
        exif = Image.Exif()
        exif[ORIENTATION] = orientation
        path = os.path.join(folder, f'turned-{orientation}.jpg')
        painted.save(path, quality=95, subsampling=0, exif=exif)
        show(path, ImageOps.exif_transpose(Image.open(path)))
        # Two formats whose readers do not turn by themselves everywhere.
        for ending, options in (('png', {}), ('webp', {'lossless': True})):
            path = os.path.join(folder, f'turned-{orientation}.{ending}')
            painted.save(path, exif=exif, **options)
            show(path, ImageOps.exif_transpose(Image.open(path)))
    srgb = ImageCms.createProfile('sRGB')
    for name, options in (('wide.png', {}), ('wide.jpg', {'quality': 95, 'subsampling': 0}),
                          ('wide.webp', {'lossless': True})):
        path = os.path.join(folder, name)
        painted.save(path, icc_profile=WIDE, **options)
        opened = Image.open(path).convert('RGB')
        show(path, ImageCms.profileToProfile(opened, io.BytesIO(WIDE), srgb))
    path = os.path.join(folder, 'wide-indexed.png')
    painted.quantize(16).save(path, icc_profile=WIDE)
    show(path, ImageCms.profileToProfile(Image.open(path).convert('RGB'), io.BytesIO(WIDE), srgb))
    # sRGB itself, and a gamma without a profile, change nothing at all.
    path = os.path.join(folder, 'exact-srgb.png')
    painted.save(path, icc_profile=SAME)
    show(path, painted)


main()

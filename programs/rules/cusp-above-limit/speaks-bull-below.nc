%
O1 (the flat of 0.5 mm and 0.02 mm more, to the other side)
G21 G90 G17 G94
G54
T6 M6
G43 H6
S30000 M3
G0 X-1.5 Y0. Z1.
Z-0.01
G1 X1.5 F100.
Y-0.52
X-1.5 ; expect cusp-above-limit warning x1: passes 0.52 mm apart leave cusps of 0.2001 µm && passes 0.5199 mm apart along the surface, or less && radius 0.25 mm, flat of 0.5 mm; job.cusp
G0 Z1.
M5
M30
%

%
O1 (arcs in ZX and YZ that fall just flat enough; steeper ones only above the part)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-1. Y0.5 Z1.
Z0.
G18 G2 X0. Z-0.025 I1. K19.975 F100.
G0 Z1.
G0 X-2. Y-0.5
Z0.0753
G2 X0. Z-0.025 I2. K19.8997
G0 Z1.
G0 X0. Y0.9
Z0.
G19 G2 Y-0.1 Z-0.025 J-1. K19.975
G17 G0 Z1.
M5
M30
%

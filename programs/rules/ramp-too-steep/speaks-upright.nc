%
O1 (an arc in ZX just too steep, and one in YZ; then one that ends as high as it begins)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-1. Y0.5 Z1.
Z0.
G18 G2 X0. Z-0.0263 I1. K18.9737 F100. ; expect ramp-too-steep warning x3: a ramp of 3.01 && on an arc of radius 19 mm in the ZX plane
G0 Z1.
G0 X0. Y0.1
Z0.
G19 G2 Y-0.9 Z-0.0263 J-1. K18.9737
G17 G0 Z1.
G0 X0.5 Y0.
Z0.
G18 G2 X1.3 Z0. R0.5
G17 G0 Z1.
M5
M30
%

%
O1 (a pass of just less than the thinnest chip)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.0004
G1 X3. F100. ; expect depth-below-minimum error: depth 0.4 µm, minimum chip of the end edge 0.45 µm && a depth above 0.45 µm, or a sharper tool && edge radius from tools.3.edge_radius, ratio from material.minimum_chip_ratio | expect depth-below-edge-radius warning: edge radius from tools.3.edge_radius
G0 Z1.
M5
M30
%

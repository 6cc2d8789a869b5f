%
O1 (a pass of just less than the edge radius)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.0014
G1 X3. F100. ; expect depth-below-edge-radius warning: depth 1.4 µm, edge radius 1.5 µm && edge radius from tools.3.edge_radius
G0 Z1.
M5
M30
%

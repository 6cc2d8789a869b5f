%
O1 (a second pass deeper than the edges are long)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.2
G1 X3. F100.
Z-0.8001
X-3. ; expect depth-beyond-cutting-length error: depth 0.6001 mm, cutting length 0.6 mm && passes of 0.6 mm or less, or a longer tool && cutting length from tools.3.cutting_length
G0 Z1.
M5
M30
%

%
O1 (beside a wall of 0.02 mm the advance is 0.4359 of the feed per tooth)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F300.
Y0.02
X-3. F110.1 ; expect runout-exceeds-feed warning: runout 0.8 µm, largest advance of a tooth across its edge 0.7999 µm && a feed per tooth above 1.835 µm, or a tool clamped to less runout && tool 3, 2 flutes: feed per tooth 110.1 mm/min / (30000 rpm × 2) = 1.835 µm && engagement: largest sine 0.4359 && runout from tools.3.runout
G0 Z1.
M5
M30
%

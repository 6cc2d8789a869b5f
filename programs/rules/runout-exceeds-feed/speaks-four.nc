%
O1 (four teeth: neighbours differ by 0.7071 of half the reading)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F67.8 ; expect runout-exceeds-feed warning: runout 0.8 µm, between neighbouring teeth 0.5657 µm, largest advance of a tooth across its edge 0.565 µm && a feed per tooth above 0.5657 µm, or a tool clamped to less runout && tool 3, 4 flutes: feed per tooth 67.8 mm/min / (30000 rpm × 4) = 0.565 µm && engagement: largest sine 1 && runout from tools.3.runout
G0 Z1.
M5
M30
%

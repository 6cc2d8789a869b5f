%
O1 (a full slot that makes just the chip; the feed per tooth is below the edge radius all the same)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F27. (hairline: accept feed-below-edge-radius: a chip is made all the same)
G0 Z1.
M5
M30
%

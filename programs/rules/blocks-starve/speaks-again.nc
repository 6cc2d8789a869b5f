%
O1 (a block of one and a half times its time makes half a one ready)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
G1 X0.0015 F450.
X0.003
X0.0045
X0.006
X0.0075
X0.009
X0.0135
X0.015
X0.0165 ; expect blocks-starve warning: behind 1 of 9 feed blocks && longer blocks, or a feed of 412 mm/min && shortest block 1.5 µm / 0.4 ms a block (machine.control.block_time) && the look-ahead of 3 blocks (machine.control.look_ahead) is used up; in sum the tool waits 0.2 ms for blocks
G0 Z1.
M5
M30
%

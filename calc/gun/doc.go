// Package gun holds the spray gun as the air sees it: the inlet valve, the
// passages and the air cap. Passages and cap are fixed by what is stamped on the
// gun; from them follow the flow and the cap pressure at any working pressure, the
// jet, and the distance at which its push is felt.
package gun

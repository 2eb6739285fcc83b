// SPDX-License-Identifier: Apache-2.0
// What a process costs that does nothing.
int main() {}

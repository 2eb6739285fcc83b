// SPDX-License-Identifier: GPL-3.0-or-later
// A frame that can lead to other screens.
import QtQuick
import Hingepin

Frame {
    signal open(string page, var properties)
    signal replace(string page, var properties)
    signal home
}

// SPDX-License-Identifier: GPL-3.0-or-later
import QtQuick
import Hingepin

BodyText {
    font.pixelSize: Theme.headingText
    font.bold: true
    Accessible.role: Accessible.Heading
}

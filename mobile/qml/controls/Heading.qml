// SPDX-License-Identifier: GPL-3.0-or-later
import QtQuick
import Hingepin

BodyText {
    size: Theme.headingText
    font.bold: true
    Accessible.role: Accessible.Heading
}

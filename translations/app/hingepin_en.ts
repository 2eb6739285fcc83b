<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en">
<context>
    <name>HistoryChart</name>
    <message numerus="yes">
        <source>%n reading(s) from %1 to %2, between %3 and %4, the last %5.</source>
        <translation>
            <numerusform>%n reading from %1 to %2, between %3 and %4, the last %5.</numerusform>
            <numerusform>%n readings from %1 to %2, between %3 and %4, the last %5.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>HoldStep</name>
    <message numerus="yes">
        <source>%n second(s)</source>
        <translation>
            <numerusform>%n second</numerusform>
            <numerusform>%n seconds</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>HomePage</name>
    <message numerus="yes">
        <source>%n unit(s) must not be used</source>
        <translation>
            <numerusform>%n unit must not be used</numerusform>
            <numerusform>%n units must not be used</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n unit(s) due now or soon</source>
        <translation>
            <numerusform>%n unit due now or soon</numerusform>
            <numerusform>%n units due now or soon</numerusform>
        </translation>
    </message>
</context>
</TS>

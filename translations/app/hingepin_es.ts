<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es">
<context>
    <name>AdmitPage</name>
    <message>
        <source>Add somebody</source>
        <translation>Admitir a alguien</translation>
    </message>
    <message>
        <source>On their own phone they press &quot;Join a yard&quot; at the first start. Hold this phone over the code that it then shows.</source>
        <translation>En su propio teléfono, la persona pulsa «Unirse a un parque» en el primer inicio. Ponga este teléfono sobre el código que muestra entonces.</translation>
    </message>
    <message>
        <source>A key on the list counts as that person&apos;s signature.</source>
        <translation>Una clave en la lista vale como la firma de esa persona.</translation>
    </message>
    <message>
        <source>Whoever holds it confirms in their name that a machine is safe. If it is somebody else, people can be hurt.</source>
        <translation>Quien la tiene confirma en su nombre que una máquina es segura. Si es otro, puede haber heridos.</translation>
    </message>
    <message>
        <source>Let in only who stands before you. Compare name and key on both screens.</source>
        <translation>Admita solo a quien está delante de usted. Compare el nombre y la clave en las dos pantallas.</translation>
    </message>
    <message>
        <source>%1 is on the list. Let their phone read this code.</source>
        <translation>%1 está en la lista. Deje que el otro teléfono lea este código.</translation>
    </message>
    <message>
        <source>Code that lets the other phone in</source>
        <translation>Código que admite el otro teléfono</translation>
    </message>
    <message>
        <source>The yard&apos;s lists do not fit in the code. Their phone can sign once it has them: with the next exchange, or as a file.</source>
        <translation>Las listas del parque no caben en el código. El otro teléfono puede firmar cuando las tenga: con el próximo intercambio, o como archivo.</translation>
    </message>
    <message>
        <source>Their key begins with %1</source>
        <translation>Su clave empieza por %1</translation>
    </message>
    <message>
        <source>Asked at %1 by the clock of that phone</source>
        <translation>Pedido a las %1 según el reloj de ese teléfono</translation>
    </message>
    <message>
        <source>They sign as</source>
        <translation>Firma como</translation>
    </message>
    <message>
        <source>The yard&apos;s passphrase</source>
        <translation>La frase de contraseña del parque</translation>
    </message>
    <message>
        <source>Let them in</source>
        <translation>Admitir</translation>
    </message>
    <message>
        <source>No, it is somebody else</source>
        <translation>No, es otra persona</translation>
    </message>
    <message>
        <source>The other phone has read it</source>
        <translation>El otro teléfono lo ha leído</translation>
    </message>
</context>
<context>
    <name>AnswerPage</name>
    <message>
        <source>Confirm for another phone</source>
        <translation>Confirmar para otro teléfono</translation>
    </message>
    <message>
        <source>On the other phone somebody presses &quot;Ask another phone&quot; at the step that you are to confirm. Hold this phone over its code.</source>
        <translation>En el otro teléfono alguien pulsa «Preguntar a otro teléfono» en el paso que usted ha de confirmar. Ponga este teléfono sobre su código.</translation>
    </message>
    <message>
        <source>Others go to work by what you confirm.</source>
        <translation>Otros se ponen a trabajar según lo que usted confirma.</translation>
    </message>
    <message>
        <source>If it is not so, the machine can start or the boom can come down on them.</source>
        <translation>Si no es así, la máquina puede arrancar o el brazo puede caer sobre ellos.</translation>
    </message>
    <message>
        <source>Go to the machine and look for yourself. Confirm only what you have seen. Local rules and the maker&apos;s manual come first.</source>
        <translation>Vaya a la máquina y mire usted mismo. Confirme solo lo que ha visto. Las normas locales y el manual del fabricante están primero.</translation>
    </message>
    <message>
        <source>%1 with %2</source>
        <translation>%1 con %2</translation>
    </message>
    <message>
        <source>%1 asks, at %2 by the clock of that phone</source>
        <translation>%1 pregunta, a las %2 según el reloj de ese teléfono</translation>
    </message>
    <message>
        <source>Said there just before:</source>
        <translation>Dicho allí justo antes:</translation>
    </message>
    <message>
        <source>You can&apos;t answer this. It is for: %1</source>
        <translation>Usted no puede responder a esto. Es para: %1</translation>
    </message>
    <message>
        <source>Your answer: yes. Let the other phone read this code.</source>
        <translation>Su respuesta: sí. Deje que el otro teléfono lea este código.</translation>
    </message>
    <message>
        <source>Your answer: no. Let the other phone read this code.</source>
        <translation>Su respuesta: no. Deje que el otro teléfono lea este código.</translation>
    </message>
    <message>
        <source>Code of your answer</source>
        <translation>Código de su respuesta</translation>
    </message>
    <message>
        <source>I confirm it</source>
        <translation>Lo confirmo</translation>
    </message>
    <message>
        <source>Sealed with your key: %1</source>
        <translation>Sellado con su clave: %1</translation>
    </message>
    <message>
        <source>No, it is not so</source>
        <translation>No, no es así</translation>
    </message>
    <message>
        <source>The other phone has read it</source>
        <translation>El otro teléfono lo ha leído</translation>
    </message>
</context>
<context>
    <name>AskPage</name>
    <message>
        <source>Ask another phone</source>
        <translation>Preguntar a otro teléfono</translation>
    </message>
    <message>
        <source>1. The second person opens &quot;Confirm for another phone&quot; on the first page of their own phone and reads this code. It holds for 15 minutes.</source>
        <translation>1. La segunda persona abre «Confirmar para otro teléfono» en la primera página de su propio teléfono y lee este código. Vale 15 minutos.</translation>
    </message>
    <message>
        <source>Code that asks for the confirmation</source>
        <translation>Código que pide la confirmación</translation>
    </message>
    <message>
        <source>2. They look for themself and answer. Then read the code that their phone shows.</source>
        <translation>2. Esa persona mira por sí misma y responde. Después lea usted el código que muestra su teléfono.</translation>
    </message>
    <message>
        <source>Hold this phone over the other one, so that the whole code of the answer is in the picture.</source>
        <translation>Ponga este teléfono sobre el otro, de modo que se vea todo el código de la respuesta.</translation>
    </message>
    <message>
        <source>Read their answer</source>
        <translation>Leer su respuesta</translation>
    </message>
    <message>
        <source>Ask again with a new code</source>
        <translation>Preguntar de nuevo con otro código</translation>
    </message>
</context>
<context>
    <name>AttachmentEditPage</name>
    <message>
        <source>Number or name of the attachment</source>
        <translation>Número o nombre del implemento</translation>
    </message>
    <message>
        <source>Quick coupler, kg</source>
        <translation>Acoplador rápido, kg</translation>
    </message>
    <message>
        <source>Bucket, kg</source>
        <translation>Cucharón, kg</translation>
    </message>
    <message>
        <source>Load&apos;s centre along the bucket floor from the hinge pin, mm</source>
        <translation>Centro de la carga a lo largo del fondo del cucharón, desde el pasador del cucharón, mm</translation>
    </message>
    <message>
        <source>Load&apos;s centre square to the floor, mm</source>
        <translation>Centro de la carga en perpendicular al fondo, mm</translation>
    </message>
    <message>
        <source>Heel along the floor, mm</source>
        <translation>Talón a lo largo del fondo, mm</translation>
    </message>
    <message>
        <source>Heel square to the floor, mm</source>
        <translation>Talón en perpendicular al fondo, mm</translation>
    </message>
    <message>
        <source>Cutting edge along the floor, mm</source>
        <translation>Cuchilla a lo largo del fondo, mm</translation>
    </message>
    <message>
        <source>Cutting edge square to the floor, mm</source>
        <translation>Cuchilla en perpendicular al fondo, mm</translation>
    </message>
    <message>
        <source>Upper stop: cutting edge above ground, mm</source>
        <translation>Parada superior: cuchilla sobre el suelo, mm</translation>
    </message>
    <message>
        <source>Lower stop: cutting edge above ground, mm</source>
        <translation>Parada inferior: cuchilla sobre el suelo, mm</translation>
    </message>
    <message>
        <source>Edit %1</source>
        <translation>Modificar %1</translation>
    </message>
    <message>
        <source>New attachment</source>
        <translation>Implemento nuevo</translation>
    </message>
    <message>
        <source>What is not known stays empty. Without masses and a load centre a known mass is needed to calibrate.</source>
        <translation>Lo que no se conoce queda vacío. Sin masas ni centro de la carga se necesita una masa conocida para calibrar.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Guardar</translation>
    </message>
</context>
<context>
    <name>AttachmentsPage</name>
    <message>
        <source>Attachments</source>
        <translation>Implementos</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>Todavía ninguno.</translation>
    </message>
    <message>
        <source>Add an attachment</source>
        <translation>Añadir un implemento</translation>
    </message>
</context>
<context>
    <name>BeginPage</name>
    <message>
        <source>Begin a job on %1</source>
        <translation>Empezar un trabajo en %1</translation>
    </message>
    <message>
        <source>Must have been done before: %1</source>
        <translation>Debe haberse hecho antes: %1</translation>
    </message>
    <message>
        <source>Have at hand: %1</source>
        <translation>Tenga a mano: %1</translation>
    </message>
    <message>
        <source>Way</source>
        <translation>Variante</translation>
    </message>
    <message>
        <source>Fitted attachment</source>
        <translation>Implemento montado</translation>
    </message>
    <message>
        <source>If nobody is here to confirm what a second person should</source>
        <translation>Si no hay nadie para confirmar lo que debe confirmar una segunda persona</translation>
    </message>
    <message>
        <source>Wait for somebody</source>
        <translation>Esperar a alguien</translation>
    </message>
    <message>
        <source>A look from afar, by photo</source>
        <translation>Mirar a distancia, en una foto</translation>
    </message>
    <message>
        <source>Go on, marked as unconfirmed</source>
        <translation>Seguir, con la salvedad «sin confirmar»</translation>
    </message>
    <message>
        <source>(empty where the attachment says it)</source>
        <translation>(vacío si lo indica el implemento)</translation>
    </message>
    <message>
        <source>Rated payload</source>
        <translation>Carga útil nominal</translation>
    </message>
    <message>
        <source>Wanted upper stop, cutting edge above ground</source>
        <translation>Parada superior deseada, cuchilla sobre el suelo</translation>
    </message>
    <message>
        <source>Test mass</source>
        <translation>Masa de prueba</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Empezar</translation>
    </message>
    <message>
        <source>Another procedure</source>
        <translation>Otro procedimiento</translation>
    </message>
    <message>
        <source>What is to be done?</source>
        <translation>¿Qué hay que hacer?</translation>
    </message>
</context>
<context>
    <name>BrokenPage</name>
    <message>
        <source>The yard can&apos;t be opened</source>
        <translation>No se puede abrir el parque</translation>
    </message>
    <message>
        <source>Nothing was changed. Keep the folder as it is, and restore a backup beside it if you have one.</source>
        <translation>No se cambió nada. Deje la carpeta como está y, si tiene una copia de seguridad, restáurela al lado.</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>Intentar de nuevo</translation>
    </message>
    <message>
        <source>Open another yard</source>
        <translation>Abrir otro parque</translation>
    </message>
</context>
<context>
    <name>CameraView</name>
    <message>
        <source>Release the shutter</source>
        <translation>Tomar la foto</translation>
    </message>
</context>
<context>
    <name>CautionStep</name>
    <message>
        <source>I have read this</source>
        <translation>He leído esto</translation>
    </message>
</context>
<context>
    <name>CertificatePage</name>
    <message>
        <source>Calibration certificate</source>
        <translation>Certificado de calibración</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Idioma</translation>
    </message>
    <message>
        <source>What you state here is not part of the sealed record, and the certificate says so. It may stay empty.</source>
        <translation>Lo que indique aquí no forma parte del registro sellado, y el certificado lo dice. Puede quedar vacío.</translation>
    </message>
    <message>
        <source>Calibrated by: name and address</source>
        <translation>Calibrado por: nombre y dirección</translation>
    </message>
    <message>
        <source>For whom: name and address</source>
        <translation>Para quién: nombre y dirección</translation>
    </message>
    <message>
        <source>Where it was done</source>
        <translation>Dónde se hizo</translation>
    </message>
    <message>
        <source>Country: two capital letters</source>
        <translation>País: dos letras mayúsculas</translation>
    </message>
    <message>
        <source>Two capital letters (ISO 3166-1), as in DE</source>
        <translation>Dos letras mayúsculas (ISO 3166-1), como DE</translation>
    </message>
    <message>
        <source>Certificates of the test masses or of the truck scale</source>
        <translation>Certificados de las masas de prueba o de la báscula de camiones</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papel</translation>
    </message>
    <message>
        <source>Save as a PDF</source>
        <translation>Guardar como PDF</translation>
    </message>
    <message>
        <source>Save as a web page</source>
        <translation>Guardar como página web</translation>
    </message>
    <message>
        <source>One HTML file that needs nothing beside it</source>
        <translation>Un archivo HTML que no necesita nada más</translation>
    </message>
    <message>
        <source>Save for programs</source>
        <translation>Guardar para programas</translation>
    </message>
    <message>
        <source>A Digital Calibration Certificate (DCC, XML)</source>
        <translation>Un certificado de calibración digital (DCC, XML)</translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation>Guardado: %1</translation>
    </message>
</context>
<context>
    <name>ChartsPage</name>
    <message>
        <source>Charts</source>
        <translation>Gráficos</translation>
    </message>
    <message>
        <source>Nothing was logged or proved that a chart could show.</source>
        <translation>No se grabó ni comprobó nada que un gráfico pueda mostrar.</translation>
    </message>
</context>
<context>
    <name>ComparePage</name>
    <message>
        <source>Check-out and return compared</source>
        <translation>Salida y devolución comparadas</translation>
    </message>
    <message>
        <source>Nothing differs that was read or answered.</source>
        <translation>No hay diferencias en lo que se leyó o se contestó.</translation>
    </message>
    <message>
        <source>The record of the check-out</source>
        <translation>El registro de la salida</translation>
    </message>
    <message>
        <source>The record of the return</source>
        <translation>El registro de la devolución</translation>
    </message>
</context>
<context>
    <name>ConfirmStep</name>
    <message>
        <source>Yes</source>
        <translation>Sí</translation>
    </message>
    <message>
        <source>No</source>
        <translation>No</translation>
    </message>
    <message>
        <source>I confirm it</source>
        <translation>Lo confirmo</translation>
    </message>
    <message>
        <source>No, it is not so</source>
        <translation>No, no es así</translation>
    </message>
    <message>
        <source>Nobody is here to confirm</source>
        <translation>No hay nadie para confirmar</translation>
    </message>
    <message>
        <source>The record will say so</source>
        <translation>Constará en el registro</translation>
    </message>
    <message>
        <source>A second person looks for themself and confirms: %1</source>
        <translation>Una segunda persona mira con sus propios ojos y confirma: %1</translation>
    </message>
    <message>
        <source>Their passphrase</source>
        <translation>Su frase de contraseña</translation>
    </message>
    <message>
        <source>Ask another phone</source>
        <translation>Preguntar a otro teléfono</translation>
    </message>
    <message>
        <source>By a code, from screen to camera; no network is needed</source>
        <translation>Con un código, de la pantalla a la cámara; no hace falta red</translation>
    </message>
    <message>
        <source>No such person has a key on this phone. Ask another phone, or add one under People.</source>
        <translation>Ninguna persona así tiene una clave en este teléfono. Pregunte a otro teléfono o añada a alguien en Personas.</translation>
    </message>
</context>
<context>
    <name>DisputePage</name>
    <message>
        <source>What was this scale worth?</source>
        <translation>¿Cuánto valía esta báscula?</translation>
    </message>
    <message>
        <source>%1 with %2</source>
        <translation>%1 con %2</translation>
    </message>
    <message>
        <source>Day of the load, as 2026-05-04</source>
        <translation>Día de la carga, como 2026-05-04</translation>
    </message>
    <message>
        <source>Year, month and day, as 2026-05-04</source>
        <translation>Año, mes y día, como 2026-05-04</translation>
    </message>
    <message>
        <source>Tell</source>
        <translation>Decir</translation>
    </message>
    <message>
        <source>Save it with the records behind it</source>
        <translation>Guardarlo con los registros que lo respaldan</translation>
    </message>
    <message>
        <source>A folder that any program for these records can verify</source>
        <translation>Una carpeta que cualquier programa para estos registros puede verificar</translation>
    </message>
</context>
<context>
    <name>DoubtStep</name>
    <message>
        <source>I meant %1</source>
        <translation>Quise decir %1</translation>
    </message>
    <message>
        <source>Type it again</source>
        <translation>Escribirlo de nuevo</translation>
    </message>
    <message>
        <source>It is %1</source>
        <translation>Es %1</translation>
    </message>
    <message>
        <source>The record will say that it was doubted and confirmed</source>
        <translation>En el registro constará que se puso en duda y se confirmó</translation>
    </message>
    <message>
        <source>%1: can that be?</source>
        <translation>%1: ¿puede ser?</translation>
    </message>
    <message>
        <source>Usual is between %1 and %2. Look for a slipped decimal mark or another unit.</source>
        <translation>Lo habitual es entre %1 y %2. Mire si se corrió el separador decimal o si es otra unidad.</translation>
    </message>
    <message>
        <source>Enter %1 %2</source>
        <translation>Introducir %1 %2</translation>
    </message>
</context>
<context>
    <name>EndStep</name>
    <message>
        <source>Seal the record</source>
        <translation>Sellar el registro</translation>
    </message>
    <message>
        <source>Show the record</source>
        <translation>Mostrar el registro</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Hecho</translation>
    </message>
    <message>
        <source>Failed: do not use this scale</source>
        <translation>Falló: no use esta báscula</translation>
    </message>
    <message>
        <source>Given up: do not use this scale</source>
        <translation>Abandonado: no use esta báscula</translation>
    </message>
    <message>
        <source>Sealed with your key. Nobody can change it without it showing.</source>
        <translation>Sellado con su clave. Nadie puede cambiarlo sin que se note.</translation>
    </message>
    <message>
        <source>Record %1</source>
        <translation>Registro %1</translation>
    </message>
</context>
<context>
    <name>EventPage</name>
    <message>
        <source>What happened to %1?</source>
        <translation>¿Qué le pasó a %1?</translation>
    </message>
    <message>
        <source>It is sealed with your key as a record of its own. From then on the scale is due, until it is proved again.</source>
        <translation>Se sella con su clave como un registro propio. Desde entonces la báscula está pendiente, hasta que se compruebe de nuevo.</translation>
    </message>
    <message>
        <source>What happened</source>
        <translation>Qué pasó</translation>
    </message>
    <message>
        <source>With which attachment</source>
        <translation>Con qué implemento</translation>
    </message>
    <message>
        <source>With any of them</source>
        <translation>Con cualquiera de ellos</translation>
    </message>
    <message>
        <source>In your words (may stay empty)</source>
        <translation>En sus palabras (puede quedar vacío)</translation>
    </message>
    <message>
        <source>Seal it</source>
        <translation>Sellarlo</translation>
    </message>
</context>
<context>
    <name>EvidenceStep</name>
    <message>
        <source>Take a photo</source>
        <translation>Tomar una foto</translation>
    </message>
    <message>
        <source>Use a practice picture</source>
        <translation>Usar una imagen de práctica</translation>
    </message>
    <message>
        <source>Invented, and marked so</source>
        <translation>Inventada, y así marcada</translation>
    </message>
    <message>
        <source>Choose a picture</source>
        <translation>Elegir una imagen</translation>
    </message>
    <message>
        <source>Choose a file</source>
        <translation>Elegir un archivo</translation>
    </message>
    <message>
        <source>Leave it out</source>
        <translation>Omitir</translation>
    </message>
    <message>
        <source>Pictures (%1)</source>
        <translation>Imágenes (%1)</translation>
    </message>
    <message>
        <source>All files (%1)</source>
        <translation>Todos los archivos (%1)</translation>
    </message>
    <message>
        <source>The phone does not let the app use its camera. Allow it in the phone&apos;s settings, or choose a picture.</source>
        <translation>El teléfono no deja que la aplicación use la cámara. Permítalo en los ajustes del teléfono o elija una imagen.</translation>
    </message>
</context>
<context>
    <name>FeedPage</name>
    <message>
        <source>Live readings</source>
        <translation>Lecturas en vivo</translation>
    </message>
    <message>
        <source>Readings come as lines of a lift log (CSV): from a sensor gateway over the network, from a file that is played back, or from the simulated loader for practice.</source>
        <translation>Las lecturas llegan como líneas de la grabación de un levantamiento (CSV): de una pasarela de sensores por la red, de un archivo que se reproduce, o de la cargadora simulada para practicar.</translation>
    </message>
    <message>
        <source>None</source>
        <translation>Ninguna</translation>
    </message>
    <message>
        <source>Simulated loader</source>
        <translation>Cargadora simulada</translation>
    </message>
    <message>
        <source>Invented; for practice units</source>
        <translation>Inventada; para equipos de práctica</translation>
    </message>
    <message>
        <source>A file, played back</source>
        <translation>Un archivo, reproducido</translation>
    </message>
    <message>
        <source>Sensor gateway (TCP)</source>
        <translation>Pasarela de sensores (TCP)</translation>
    </message>
    <message>
        <source>Address of the gateway, host:port</source>
        <translation>Dirección de la pasarela, host:puerto</translation>
    </message>
    <message>
        <source>%1 readings a second</source>
        <translation>Lecturas por segundo: %1</translation>
    </message>
    <message>
        <source>Lift logs (%1)</source>
        <translation>Grabaciones (%1)</translation>
    </message>
    <message>
        <source>Practise what goes wrong</source>
        <translation>Practicar lo que sale mal</translation>
    </message>
    <message>
        <source>The simulated loader can misbehave, from its next movement on, as if it were so on the machine. What the job then says and asks for is part of the practice.</source>
        <translation>La cargadora simulada puede portarse mal desde su próximo movimiento, como si así fuera en la máquina. Lo que el trabajo diga y pida entonces es parte de la práctica.</translation>
    </message>
    <message>
        <source>The loader misbehaves</source>
        <translation>La cargadora se porta mal</translation>
    </message>
    <message>
        <source>No, all is well</source>
        <translation>No, todo está bien</translation>
    </message>
    <message>
        <source>All is well</source>
        <translation>Todo está bien</translation>
    </message>
    <message>
        <source>Cut the readings off for 10 seconds</source>
        <translation>Cortar las lecturas 10 segundos</translation>
    </message>
    <message>
        <source>As when a plug comes off; they come back by themselves</source>
        <translation>Como cuando se suelta un conector; vuelven solas</translation>
    </message>
</context>
<context>
    <name>FirstStartPage</name>
    <message>
        <source>Calibrates the scale and the automatic stops of a wheel loader, step by step, with no signal needed, and keeps a signed record.</source>
        <translation>Calibra la báscula y las paradas automáticas de una cargadora de ruedas, paso a paso, sin necesidad de cobertura, y guarda un registro firmado.</translation>
    </message>
    <message>
        <source>The law and the rules of the site, the machine maker&apos;s manual and licensed practice come first.</source>
        <translation>La ley y las normas del sitio, el manual del fabricante de la máquina y la práctica con licencia van primero.</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Idioma</translation>
    </message>
    <message>
        <source>Making the demo yard: %1 %</source>
        <translation>Creando el parque de demostración: %1 %</translation>
    </message>
    <message>
        <source>Make my yard</source>
        <translation>Crear mi parque</translation>
    </message>
    <message>
        <source>Your key and the yard&apos;s list of who may sign</source>
        <translation>Su clave y la lista de firmantes del parque</translation>
    </message>
    <message>
        <source>Look round the demo yard</source>
        <translation>Ver el parque de demostración</translation>
    </message>
    <message>
        <source>Invented machines, people and records, to practise on</source>
        <translation>Máquinas, personas y registros inventados, para practicar</translation>
    </message>
    <message>
        <source>Join a yard</source>
        <translation>Unirse a un parque</translation>
    </message>
    <message>
        <source>It is on another phone, whose owner lets you in</source>
        <translation>Está en otro teléfono, cuyo dueño le admite</translation>
    </message>
</context>
<context>
    <name>Flash</name>
    <message>
        <source>Once more</source>
        <translation>Otra vez</translation>
    </message>
    <message>
        <source>Pass complete</source>
        <translation>Pasada completa</translation>
    </message>
    <message>
        <source>Held</source>
        <translation>Mantenido</translation>
    </message>
</context>
<context>
    <name>Frame</name>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>Working</source>
        <translation>En curso</translation>
    </message>
</context>
<context>
    <name>HistoryChart</name>
    <message>
        <source>It may lie between %1 and %2.</source>
        <translation>Puede estar entre %1 y %2.</translation>
    </message>
    <message numerus="yes">
        <source>%n reading(s) from %1 to %2, between %3 and %4, the last %5.</source>
        <translation>
            <numerusform>%n lectura del %1 al %2, entre %3 y %4, la última %5.</numerusform>
            <numerusform>%n lecturas del %1 al %2, entre %3 y %4, la última %5.</numerusform>
        </translation>
    </message>
    <message>
        <source>Measured</source>
        <translation>Medido</translation>
    </message>
    <message>
        <source>Tolerance</source>
        <translation>Tolerancia</translation>
    </message>
    <message>
        <source>Taught anew</source>
        <translation>Enseñada de nuevo</translation>
    </message>
</context>
<context>
    <name>HistoryPage</name>
    <message>
        <source>%1 with %2</source>
        <translation>%1 con %2</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>Ninguno todavía.</translation>
    </message>
    <message>
        <source>Zero</source>
        <translation>Cero</translation>
    </message>
    <message>
        <source>What it showed with an empty bucket, as found, in %1</source>
        <translation>Lo que indicó con el cucharón vacío, tal como se encontró, en %1</translation>
    </message>
    <message>
        <source>Span</source>
        <translation>Alcance</translation>
    </message>
    <message>
        <source>What it showed of a known mass less its zero, in % of that mass</source>
        <translation>Lo que indicó de una masa conocida menos su cero, en % de esa masa</translation>
    </message>
    <message>
        <source>Errors of the proofs</source>
        <translation>Errores de las comprobaciones</translation>
    </message>
    <message>
        <source>In % of the known mass</source>
        <translation>En % de la masa conocida</translation>
    </message>
</context>
<context>
    <name>HoldStep</name>
    <message>
        <source>It was disturbed: begin again</source>
        <translation>Se interrumpió: empezar de nuevo</translation>
    </message>
    <message>
        <source>Begin: %1</source>
        <translation>Empezar: %1</translation>
    </message>
    <message numerus="yes">
        <source>%n second(s)</source>
        <translation>
            <numerusform>%n segundo</numerusform>
            <numerusform>%n segundos</numerusform>
        </translation>
    </message>
    <message>
        <source>Failed</source>
        <translation>Falló</translation>
    </message>
</context>
<context>
    <name>HomePage</name>
    <message>
        <source>Demo yard (invented)</source>
        <translation>Parque de demostración (inventado)</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message numerus="yes">
        <source>%n unit(s) must not be used</source>
        <translation>
            <numerusform>%n equipo no se debe usar</numerusform>
            <numerusform>%n equipos no se deben usar</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n unit(s) due now or soon</source>
        <translation>
            <numerusform>A %n equipo le toca ya o pronto</numerusform>
            <numerusform>A %n equipos les toca ya o pronto</numerusform>
        </translation>
    </message>
    <message>
        <source>Waiting for a second person</source>
        <translation>Espera a una segunda persona</translation>
    </message>
    <message>
        <source>Nothing waits.</source>
        <translation>No hay nada en espera.</translation>
    </message>
    <message>
        <source>%1, since %2</source>
        <translation>%1, desde %2</translation>
    </message>
    <message>
        <source>Confirmed lately</source>
        <translation>Confirmado hace poco</translation>
    </message>
    <message>
        <source>Out on hire</source>
        <translation>En alquiler</translation>
    </message>
    <message>
        <source>No unit is out.</source>
        <translation>No hay equipos fuera.</translation>
    </message>
    <message>
        <source>since %1</source>
        <translation>desde %1</translation>
    </message>
    <message>
        <source>Go on with</source>
        <translation>Seguir con</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Equipos</translation>
    </message>
    <message>
        <source>No unit yet. Add the first one below.</source>
        <translation>Todavía no hay equipos. Añada el primero abajo.</translation>
    </message>
    <message>
        <source>locked out</source>
        <translation>bloqueado</translation>
    </message>
    <message>
        <source>Add a unit</source>
        <translation>Añadir un equipo</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Ajustes</translation>
    </message>
    <message>
        <source>Confirm for another phone</source>
        <translation>Confirmar para otro teléfono</translation>
    </message>
    <message>
        <source>Reads the code by which it asks</source>
        <translation>Lee el código con el que pregunta</translation>
    </message>
</context>
<context>
    <name>JobMorePage</name>
    <message>
        <source>This job</source>
        <translation>Este trabajo</translation>
    </message>
    <message>
        <source>Go on later</source>
        <translation>Seguir más tarde</translation>
    </message>
    <message>
        <source>Nothing is lost; it opens again at this step</source>
        <translation>No se pierde nada; se abre de nuevo en este paso</translation>
    </message>
    <message>
        <source>Give the job up</source>
        <translation>Abandonar el trabajo</translation>
    </message>
    <message>
        <source>The job then ends as given up: the machine is made safe, and its scale is tagged not to be used.</source>
        <translation>El trabajo termina entonces como abandonado: la máquina se deja segura y su báscula se etiqueta para que no se use.</translation>
    </message>
    <message>
        <source>Hold to give up</source>
        <translation>Mantener pulsado: abandonar</translation>
    </message>
    <message>
        <source>Keep on working</source>
        <translation>Seguir trabajando</translation>
    </message>
    <message>
        <source>Done so far, the newest first</source>
        <translation>Hecho hasta ahora, lo más reciente primero</translation>
    </message>
    <message>
        <source>(does not count)</source>
        <translation>(no cuenta)</translation>
    </message>
    <message>
        <source>Live readings</source>
        <translation>Lecturas en vivo</translation>
    </message>
    <message>
        <source>None are open</source>
        <translation>No hay ninguna abierta</translation>
    </message>
    <message>
        <source>They are coming</source>
        <translation>Están llegando</translation>
    </message>
    <message>
        <source>They have stopped</source>
        <translation>Se han detenido</translation>
    </message>
    <message>
        <source>Charts</source>
        <translation>Gráficos</translation>
    </message>
    <message>
        <source>Passes, what the fit leaves, errors of the proof</source>
        <translation>Pasadas, lo que deja el ajuste, errores de la comprobación</translation>
    </message>
</context>
<context>
    <name>JobPage</name>
    <message>
        <source>%1 with %2</source>
        <translation>%1 con %2</translation>
    </message>
    <message>
        <source>practice, invented</source>
        <translation>práctica, inventado</translation>
    </message>
    <message>
        <source>Step %1 of %2</source>
        <translation>Paso %1 de %2</translation>
    </message>
    <message>
        <source>The job has stopped. Make the machine safe first.</source>
        <translation>El trabajo se detuvo. Primero deje segura la máquina.</translation>
    </message>
    <message>
        <source>Not passed</source>
        <translation>No superado</translation>
    </message>
    <message>
        <source>It was: %1</source>
        <translation>Fue: %1</translation>
    </message>
    <message>
        <source>Do this now:</source>
        <translation>Haga esto ahora:</translation>
    </message>
    <message>
        <source>Do the last step again</source>
        <translation>Repetir el último paso</translation>
    </message>
    <message>
        <source>What was said stays on the record and no longer counts</source>
        <translation>Lo dicho queda en el registro y ya no cuenta</translation>
    </message>
    <message>
        <source>All that was done so far, giving up, going on later</source>
        <translation>Todo lo hecho hasta ahora, abandonar, seguir más tarde</translation>
    </message>
    <message>
        <source>What the survey found</source>
        <translation>Lo que halló la medición</translation>
    </message>
</context>
<context>
    <name>JoinPage</name>
    <message>
        <source>Join a yard</source>
        <translation>Unirse a un parque</translation>
    </message>
    <message>
        <source>The yard is on another phone. This one makes a key of your own, and asks that phone to let you in.</source>
        <translation>El parque está en otro teléfono. Este crea una clave propia para usted y pide a aquel que le admita.</translation>
    </message>
    <message>
        <source>Your name</source>
        <translation>Su nombre</translation>
    </message>
    <message>
        <source>Passphrase: 12 characters or more, a few words are best</source>
        <translation>Frase de contraseña: 12 caracteres o más, lo mejor son unas cuantas palabras</translation>
    </message>
    <message>
        <source>The same passphrase again</source>
        <translation>La misma frase de contraseña otra vez</translation>
    </message>
    <message>
        <source>This is not the same.</source>
        <translation>No es la misma.</translation>
    </message>
    <message>
        <source>It locks your signing key on this phone. Nobody can recover it: if it is lost, you join again with a new key.</source>
        <translation>Protege en este teléfono su clave de firma. Nadie puede recuperarla: si se pierde, únase de nuevo con una clave nueva.</translation>
    </message>
    <message>
        <source>Make my key</source>
        <translation>Crear mi clave</translation>
    </message>
</context>
<context>
    <name>JoiningPage</name>
    <message>
        <source>Join a yard</source>
        <translation>Unirse a un parque</translation>
    </message>
    <message>
        <source>Code that asks to be let in</source>
        <translation>Código que pide ser admitido</translation>
    </message>
    <message>
        <source>Your key begins with %1</source>
        <translation>Su clave empieza por %1</translation>
    </message>
    <message>
        <source>1. On the phone that has the yard&apos;s key, open Settings, People, &quot;Add somebody on their own phone&quot;, and read this code. It holds for a day.</source>
        <translation>1. En el teléfono que tiene la clave del parque, abra Ajustes, Personas, «Admitir a alguien en su propio teléfono» y lea este código. Vale un día.</translation>
    </message>
    <message>
        <source>2. Compare on both screens how the key begins. Then read the code that the other phone shows.</source>
        <translation>2. Compare en las dos pantallas cómo empieza la clave. Después lea el código que muestra el otro teléfono.</translation>
    </message>
    <message>
        <source>Hold this phone over the yard&apos;s phone, so that the whole code is in the picture.</source>
        <translation>Ponga este teléfono sobre el del parque, de modo que se vea todo el código.</translation>
    </message>
    <message>
        <source>Your passphrase, to make a new code</source>
        <translation>Su frase de contraseña, para crear un código nuevo</translation>
    </message>
    <message>
        <source>Make a new code</source>
        <translation>Crear un código nuevo</translation>
    </message>
    <message>
        <source>Make a yard of my own instead</source>
        <translation>Crear mejor un parque propio</translation>
    </message>
    <message>
        <source>The key that was made here is then removed. If it has been let in already, have it revoked.</source>
        <translation>La clave creada aquí se elimina entonces. Si ya fue admitida, haga que la revoquen.</translation>
    </message>
    <message>
        <source>Hold to remove the key</source>
        <translation>Mantener pulsado: eliminar la clave</translation>
    </message>
    <message>
        <source>Keep the key</source>
        <translation>Conservar la clave</translation>
    </message>
    <message>
        <source>Read the yard&apos;s code</source>
        <translation>Leer el código del parque</translation>
    </message>
    <message>
        <source>Make the code</source>
        <translation>Crear el código</translation>
    </message>
    <message>
        <source>Show my code again</source>
        <translation>Mostrar otra vez mi código</translation>
    </message>
</context>
<context>
    <name>Keypad</name>
    <message>
        <source>Delete the last digit</source>
        <translation>Borrar la última cifra</translation>
    </message>
    <message>
        <source>Plus or minus</source>
        <translation>Más o menos</translation>
    </message>
    <message>
        <source>Decimal mark</source>
        <translation>Separador decimal</translation>
    </message>
</context>
<context>
    <name>KeysLostPage</name>
    <message>
        <source>The keys are not on this phone</source>
        <translation>Las claves no están en este teléfono</translation>
    </message>
    <message>
        <source>Units, jobs and records of the yard are here, but no key to sign with. So it is after a phone was restored from a backup: backups hold no keys, so that nobody else can sign with yours.</source>
        <translation>Los equipos, trabajos y registros del parque están aquí, pero no hay ninguna clave para firmar. Así ocurre después de restaurar un teléfono desde una copia: las copias no llevan claves, para que nadie más pueda firmar con las suyas.</translation>
    </message>
    <message>
        <source>Nothing is lost: what was signed stays signed, and can be checked. With new keys you go on. The yard&apos;s list of who may sign then begins anew, with all who were on it, and other phones of the yard must accept it.</source>
        <translation>No se pierde nada: lo firmado sigue firmado y se puede comprobar. Con claves nuevas se continúa. La lista del parque de quién puede firmar empieza entonces de nuevo, con todos los que estaban en ella, y los demás teléfonos del parque deben aceptarla.</translation>
    </message>
    <message>
        <source>If the old phone was lost or stolen, its key can still sign. Have it revoked.</source>
        <translation>Si el teléfono anterior se perdió o lo robaron, su clave todavía puede firmar. Haga que la revoquen.</translation>
    </message>
    <message>
        <source>Make new keys</source>
        <translation>Crear claves nuevas</translation>
    </message>
    <message>
        <source>Open another yard</source>
        <translation>Abrir otro parque</translation>
    </message>
</context>
<context>
    <name>LevelPage</name>
    <message>
        <source>The phone as a level</source>
        <translation>El teléfono como nivel</translation>
    </message>
    <message>
        <source>A raised boom can come down.</source>
        <translation>Un brazo levantado puede caer.</translation>
    </message>
    <message>
        <source>Whoever is under it is crushed.</source>
        <translation>Quien esté debajo queda aplastado.</translation>
    </message>
    <message>
        <source>Measure on a raised boom only with the engine off, the key removed, the boom support fitted, and nobody under it.</source>
        <translation>Mida en un brazo levantado solo con el motor apagado, la llave fuera, el soporte del brazo colocado y nadie debajo.</translation>
    </message>
    <message>
        <source>This phone has no accelerometer. Use an inclinometer and type what it shows.</source>
        <translation>Este teléfono no tiene acelerómetro. Use un inclinómetro y escriba lo que muestra.</translation>
    </message>
    <message>
        <source>Slope along the phone&apos;s long side, as it lay first:</source>
        <translation>Inclinación a lo largo del lado largo del teléfono, como estaba la primera vez:</translation>
    </message>
    <message>
        <source>2. Turn the phone half round on the same spot, its top where its foot was. Hands off, then measure again.</source>
        <translation>2. Gire el teléfono media vuelta en el mismo lugar, con la parte de arriba donde estaba la de abajo. Quite las manos, después mida de nuevo.</translation>
    </message>
    <message>
        <source>1. Lay the phone flat on the bucket floor, the boom or the ground, its long side along the machine. Hands off, then measure.</source>
        <translation>1. Ponga el teléfono plano sobre el fondo del cucharón, el brazo o el suelo, con su lado largo a lo largo de la máquina. Quite las manos, después mida.</translation>
    </message>
    <message>
        <source>Measuring: keep your hands off</source>
        <translation>Midiendo: no lo toque</translation>
    </message>
    <message>
        <source>Measure</source>
        <translation>Medir</translation>
    </message>
    <message>
        <source>Begin again</source>
        <translation>Empezar de nuevo</translation>
    </message>
</context>
<context>
    <name>LiftChart</name>
    <message>
        <source>%1: %2 to %3 %4, from %5° to %6°.</source>
        <translation>%1: de %2 a %3 %4, de %5° a %6°.</translation>
    </message>
    <message>
        <source>Fitted tare: %1 to %2 %3, known to ± %4 %3 (95 %).</source>
        <translation>Tara ajustada: de %1 a %2 %3, conocida a ± %4 %3 (95 %).</translation>
    </message>
    <message>
        <source>Lift pressure</source>
        <translation>Presión de elevación</translation>
    </message>
    <message>
        <source>Pressure in %1, over the boom&apos;s angle</source>
        <translation>Presión en %1, según el ángulo del brazo</translation>
    </message>
    <message>
        <source>Pressure in %1, over the boom sensor&apos;s reading</source>
        <translation>Presión en %1, según la lectura del sensor del brazo</translation>
    </message>
    <message>
        <source>Chart of the lift pressure.</source>
        <translation>Gráfico de la presión de elevación.</translation>
    </message>
    <message>
        <source>This pass</source>
        <translation>Esta pasada</translation>
    </message>
    <message>
        <source>Fitted tare</source>
        <translation>Tara ajustada</translation>
    </message>
    <message>
        <source>Where it lies with 95 % probability</source>
        <translation>Donde está con un 95 % de probabilidad</translation>
    </message>
</context>
<context>
    <name>LiveBar</name>
    <message>
        <source>No readings are coming. They are waited for.</source>
        <translation>No llegan lecturas. Se esperan.</translation>
    </message>
    <message>
        <source>Boom rising</source>
        <translation>El brazo sube</translation>
    </message>
    <message>
        <source>Boom lowering</source>
        <translation>El brazo baja</translation>
    </message>
    <message>
        <source>Standing still</source>
        <translation>Quieto</translation>
    </message>
    <message>
        <source>Boom %1°</source>
        <translation>Brazo %1°</translation>
    </message>
    <message>
        <source>wanted %1°</source>
        <translation>deseado %1°</translation>
    </message>
    <message>
        <source>%1 % done</source>
        <translation>%1 % hecho</translation>
    </message>
    <message>
        <source>Practice: %1 It stays so until you say under Live readings that all is well, as if it had been mended.</source>
        <translation>Práctica: %1 Sigue así hasta que diga en «Lecturas en vivo» que todo está bien, como si se hubiera reparado.</translation>
    </message>
</context>
<context>
    <name>MachineView</name>
    <message>
        <source>Side view of the loader. Measure from A to B: %1</source>
        <translation>Vista lateral de la cargadora. Medir de A a B: %1</translation>
    </message>
    <message>
        <source>Side view of the loader, boom at %1 degrees</source>
        <translation>Vista lateral de la cargadora, brazo a %1 grados</translation>
    </message>
    <message>
        <source>Side view of the loader</source>
        <translation>Vista lateral de la cargadora</translation>
    </message>
    <message>
        <source>%1 degrees wanted</source>
        <translation>deseado: %1 grados</translation>
    </message>
    <message>
        <source>plausible, not its own pins</source>
        <translation>verosímil, no con sus propios pasadores</translation>
    </message>
</context>
<context>
    <name>Main</name>
    <message>
        <source>Press to close this message</source>
        <translation>Pulse para cerrar este mensaje</translation>
    </message>
</context>
<context>
    <name>MakeYardPage</name>
    <message>
        <source>Make my yard</source>
        <translation>Crear mi parque</translation>
    </message>
    <message>
        <source>Your name</source>
        <translation>Su nombre</translation>
    </message>
    <message>
        <source>You are mostly</source>
        <translation>Su papel habitual</translation>
    </message>
    <message>
        <source>Passphrase: 12 characters or more, a few words are best</source>
        <translation>Frase de contraseña: 12 caracteres o más, lo mejor son unas cuantas palabras</translation>
    </message>
    <message>
        <source>The same passphrase again</source>
        <translation>La misma frase de contraseña otra vez</translation>
    </message>
    <message>
        <source>This is not the same.</source>
        <translation>No es la misma.</translation>
    </message>
    <message>
        <source>It locks your signing key and the yard&apos;s key on this phone. Nobody can recover it: write it down and keep it where the office keeps its keys. Others can be added later, each with a key of their own.</source>
        <translation>Protege en este teléfono su clave de firma y la clave del parque. Nadie puede recuperarla: anótela y guárdela donde la oficina guarda sus llaves. Después se pueden añadir otras personas, cada una con su propia clave.</translation>
    </message>
    <message>
        <source>Make the keys and the yard</source>
        <translation>Crear las claves y el parque</translation>
    </message>
    <message>
        <source>Make new keys</source>
        <translation>Crear claves nuevas</translation>
    </message>
    <message>
        <source>Make the new keys</source>
        <translation>Crear las claves nuevas</translation>
    </message>
</context>
<context>
    <name>MonitorStep</name>
    <message>
        <source>In the monitor&apos;s own words, if you like</source>
        <translation>Con las palabras del monitor, si quiere</translation>
    </message>
</context>
<context>
    <name>MoveStep</name>
    <message>
        <source>Move the practice loader</source>
        <translation>Mover la cargadora de práctica</translation>
    </message>
    <message>
        <source>It does what the step asks; on a real machine your hands are on the levers</source>
        <translation>Hace lo que pide el paso; en una máquina real sus manos están en las palancas</translation>
    </message>
    <message>
        <source>The pass is done</source>
        <translation>La pasada está hecha</translation>
    </message>
    <message>
        <source>It stands there</source>
        <translation>Está en posición</translation>
    </message>
    <message>
        <source>Failed</source>
        <translation>Falló</translation>
    </message>
    <message>
        <source>Boom at its lowest</source>
        <translation>Brazo en lo más bajo</translation>
    </message>
    <message>
        <source>Boom at its highest</source>
        <translation>Brazo en lo más alto</translation>
    </message>
    <message>
        <source>Boom level</source>
        <translation>Brazo horizontal</translation>
    </message>
    <message>
        <source>Boom at carry height</source>
        <translation>Brazo a la altura de transporte</translation>
    </message>
    <message>
        <source>Boom down, on the ground</source>
        <translation>Brazo abajo, en el suelo</translation>
    </message>
    <message>
        <source>bucket racked back</source>
        <translation>cucharón recogido</translation>
    </message>
    <message>
        <source>bucket level</source>
        <translation>cucharón horizontal</translation>
    </message>
    <message>
        <source>bucket dumped</source>
        <translation>cucharón volcado</translation>
    </message>
    <message>
        <source>come from below</source>
        <translation>llegar desde abajo</translation>
    </message>
    <message>
        <source>come from above</source>
        <translation>llegar desde arriba</translation>
    </message>
    <message>
        <source>Raise</source>
        <translation>Subir</translation>
    </message>
    <message>
        <source>Lower</source>
        <translation>Bajar</translation>
    </message>
    <message>
        <source>slowly</source>
        <translation>despacio</translation>
    </message>
    <message>
        <source>fast</source>
        <translation>rápido</translation>
    </message>
    <message>
        <source>at your own pace</source>
        <translation>a su ritmo</translation>
    </message>
    <message>
        <source>bucket empty</source>
        <translation>cucharón vacío</translation>
    </message>
    <message>
        <source>with the test mass</source>
        <translation>con la masa de prueba</translation>
    </message>
    <message>
        <source>This pass needs a log: open live readings, or bring the log as a file.</source>
        <translation>Esta pasada necesita una grabación: abra las lecturas en vivo o traiga la grabación como archivo.</translation>
    </message>
    <message>
        <source>Bring the log as a file</source>
        <translation>Traer la grabación como archivo</translation>
    </message>
    <message>
        <source>Practise with the simulated loader</source>
        <translation>Practicar con la cargadora simulada</translation>
    </message>
    <message>
        <source>Lift logs (%1)</source>
        <translation>Grabaciones (%1)</translation>
    </message>
</context>
<context>
    <name>NoteStep</name>
    <message>
        <source>Write it down</source>
        <translation>Anotar</translation>
    </message>
    <message>
        <source>Nothing to note</source>
        <translation>Nada que anotar</translation>
    </message>
    <message>
        <source>In your own words</source>
        <translation>Con sus propias palabras</translation>
    </message>
</context>
<context>
    <name>PeoplePage</name>
    <message>
        <source>People</source>
        <translation>Personas</translation>
    </message>
    <message>
        <source>May not sign any more</source>
        <translation>Ya no puede firmar</translation>
    </message>
    <message>
        <source>Key %1</source>
        <translation>Clave %1</translation>
    </message>
    <message>
        <source>Their name</source>
        <translation>Su nombre</translation>
    </message>
    <message>
        <source>A passphrase of their own, 12 characters or more</source>
        <translation>Una frase de contraseña propia, 12 caracteres o más</translation>
    </message>
    <message>
        <source>The yard&apos;s passphrase</source>
        <translation>La frase de contraseña del parque</translation>
    </message>
    <message>
        <source>Add this person</source>
        <translation>Añadir a esta persona</translation>
    </message>
    <message>
        <source>Add a person</source>
        <translation>Añadir a una persona</translation>
    </message>
    <message>
        <source>Add somebody on their own phone</source>
        <translation>Admitir a alguien en su propio teléfono</translation>
    </message>
    <message>
        <source>Signs on their own phone</source>
        <translation>Firma en su propio teléfono</translation>
    </message>
</context>
<context>
    <name>Plot</name>
    <message>
        <source>Slow, lowering</source>
        <translation>Lenta, bajando</translation>
    </message>
    <message>
        <source>Fast, lowering</source>
        <translation>Rápida, bajando</translation>
    </message>
    <message>
        <source>Slow, raising</source>
        <translation>Lenta, subiendo</translation>
    </message>
    <message>
        <source>Fast, raising</source>
        <translation>Rápida, subiendo</translation>
    </message>
</context>
<context>
    <name>ProofChart</name>
    <message>
        <source>Reading %1: %2 %</source>
        <translation>Lectura %1: %2 %</translation>
    </message>
    <message>
        <source>outside</source>
        <translation>fuera</translation>
    </message>
    <message>
        <source>Mean %1 %.</source>
        <translation>Media %1 %.</translation>
    </message>
    <message>
        <source>The mean may be off by %1 %.</source>
        <translation>La media puede desviarse %1 %.</translation>
    </message>
    <message>
        <source>Errors of the proof</source>
        <translation>Errores de la comprobación</translation>
    </message>
    <message>
        <source>Error in % of the known mass, over the number of the reading</source>
        <translation>Error en % de la masa conocida, según el número de la lectura</translation>
    </message>
    <message>
        <source>Chart of the errors of the proof.</source>
        <translation>Gráfico de los errores de la comprobación.</translation>
    </message>
    <message>
        <source>Within the tolerance</source>
        <translation>Dentro de la tolerancia</translation>
    </message>
    <message>
        <source>Outside</source>
        <translation>Fuera</translation>
    </message>
    <message>
        <source>Mean</source>
        <translation>Media</translation>
    </message>
    <message>
        <source>Tolerance of the mean</source>
        <translation>Tolerancia de la media</translation>
    </message>
</context>
<context>
    <name>ReadingStep</name>
    <message>
        <source>steady</source>
        <translation>estable</translation>
    </message>
    <message>
        <source>not steady yet</source>
        <translation>todavía no estable</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>Introducir</translation>
    </message>
    <message>
        <source>Enter %1 %2</source>
        <translation>Introducir %1 %2</translation>
    </message>
    <message>
        <source>Typed: %1</source>
        <translation>Escrito: %1</translation>
    </message>
    <message>
        <source>Between %1 and %2</source>
        <translation>Entre %1 y %2</translation>
    </message>
    <message>
        <source>At least %1</source>
        <translation>Al menos %1</translation>
    </message>
    <message>
        <source>At most %1</source>
        <translation>Como máximo %1</translation>
    </message>
    <message>
        <source>Last time: %1</source>
        <translation>La última vez: %1</translation>
    </message>
    <message>
        <source>Practice: the instrument shows %1</source>
        <translation>Práctica: el instrumento muestra %1</translation>
    </message>
    <message>
        <source>Unit %1</source>
        <translation>Unidad %1</translation>
    </message>
    <message>
        <source>Take the live value</source>
        <translation>Tomar el valor en vivo</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>nothing comes yet</source>
        <translation>aún no llega nada</translation>
    </message>
    <message>
        <source>It is the known mass: %1</source>
        <translation>Es la masa conocida: %1</translation>
    </message>
    <message>
        <source>The app weighed %1 in this lift</source>
        <translation>La aplicación pesó %1 en este levantamiento</translation>
    </message>
    <message>
        <source>± %1. Take it where the machine itself takes no values</source>
        <translation>± %1. Tómelo donde la propia máquina no admite valores</translation>
    </message>
    <message>
        <source>Not measured</source>
        <translation>No medido</translation>
    </message>
    <message>
        <source>In the picture: the slope of the line from A to B</source>
        <translation>En la imagen: la inclinación de la línea de A a B</translation>
    </message>
    <message>
        <source>In the picture: from A to B</source>
        <translation>En la imagen: de A a B</translation>
    </message>
    <message>
        <source>The loader is a plausible one: its own pins are not known yet.</source>
        <translation>La cargadora es una plausible: sus propios pasadores aún no se conocen.</translation>
    </message>
    <message>
        <source>Take the phone&apos;s level: %1°</source>
        <translation>Tomar el nivel del teléfono: %1°</translation>
    </message>
    <message>
        <source>Measure with the phone as a level</source>
        <translation>Medir con el teléfono como nivel</translation>
    </message>
    <message>
        <source>%1. Measured with the phone&apos;s top towards the bucket?</source>
        <translation>%1. ¿Medido con la parte superior del teléfono hacia el cucharón?</translation>
    </message>
    <message>
        <source>Lay it with its top towards the bucket</source>
        <translation>Póngalo con la parte superior hacia el cucharón</translation>
    </message>
</context>
<context>
    <name>RecordPage</name>
    <message>
        <source>Record</source>
        <translation>Registro</translation>
    </message>
    <message>
        <source>Hand over</source>
        <translation>Entregar</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papel</translation>
    </message>
    <message>
        <source>Save as a PDF</source>
        <translation>Guardar como PDF</translation>
    </message>
    <message>
        <source>Save the sealed record itself</source>
        <translation>Guardar el propio registro sellado</translation>
    </message>
    <message>
        <source>Any program that knows JSON Web Signatures can check it</source>
        <translation>Lo puede verificar cualquier programa que conozca JSON Web Signatures</translation>
    </message>
    <message>
        <source>Save the tag as a PDF</source>
        <translation>Guardar la etiqueta como PDF</translation>
    </message>
    <message>
        <source>Sign it too</source>
        <translation>Firmarlo también</translation>
    </message>
    <message>
        <source>A further signature, with your own key</source>
        <translation>Una firma más, con su propia clave</translation>
    </message>
    <message>
        <source>Correct it</source>
        <translation>Corregirlo</translation>
    </message>
    <message>
        <source>By a new record that names this one; this one stays as it is</source>
        <translation>Con un registro nuevo que nombra a este; este queda como está</translation>
    </message>
    <message>
        <source>What was wrong, and what is right</source>
        <translation>Qué estaba mal y qué es lo correcto</translation>
    </message>
    <message>
        <source>Seal the correction</source>
        <translation>Sellar la corrección</translation>
    </message>
    <message>
        <source>Charts</source>
        <translation>Gráficos</translation>
    </message>
    <message>
        <source>Passes, what the fit leaves, errors of the proof</source>
        <translation>Pasadas, lo que deja el ajuste, errores de la comprobación</translation>
    </message>
    <message>
        <source>Calibration certificate</source>
        <translation>Certificado de calibración</translation>
    </message>
    <message>
        <source>To print, or for programs</source>
        <translation>Para imprimir, o para programas</translation>
    </message>
    <message>
        <source>Where it stands</source>
        <translation>Cómo está</translation>
    </message>
</context>
<context>
    <name>ResidualChart</name>
    <message>
        <source>bucket empty</source>
        <translation>cucharón vacío</translation>
    </message>
    <message>
        <source>with the test mass</source>
        <translation>con la masa de prueba</translation>
    </message>
    <message>
        <source>with a load</source>
        <translation>con una carga</translation>
    </message>
    <message>
        <source>Standard deviation %1 %2, largest %3 %2</source>
        <translation>Desviación estándar %1 %2, mayor %3 %2</translation>
    </message>
    <message>
        <source>What the fit leaves</source>
        <translation>Lo que deja el ajuste</translation>
    </message>
    <message>
        <source>Measured less fitted, in %1, over the boom&apos;s angle; the chosen pass is drawn thick</source>
        <translation>Medido menos ajustado, en %1, según el ángulo del brazo; la pasada elegida va en trazo grueso</translation>
    </message>
    <message>
        <source>Chart of what the fit leaves.</source>
        <translation>Gráfico de lo que deja el ajuste.</translation>
    </message>
</context>
<context>
    <name>ResumeStep</name>
    <message>
        <source>Go on</source>
        <translation>Seguir</translation>
    </message>
    <message>
        <source>Take the job over as %1</source>
        <translation>Asumir el trabajo como %1</translation>
    </message>
    <message>
        <source>The job was interrupted</source>
        <translation>El trabajo se interrumpió</translation>
    </message>
    <message>
        <source>Everything that was done is kept. Before you go on: is the machine as you left it, and is nobody near it? Cautions that still hold are shown again, and &quot;the zone is clear&quot; is asked for again.</source>
        <translation>Todo lo hecho se conserva. Antes de seguir: ¿está la máquina como la dejó, y no hay nadie cerca? Los avisos de seguridad que siguen vigentes se muestran otra vez, y se pide otra vez «zona libre».</translation>
    </message>
    <message>
        <source>Somebody else</source>
        <translation>Otra persona</translation>
    </message>
    <message>
        <source>%1 is in charge.</source>
        <translation>A cargo: %1.</translation>
    </message>
    <message>
        <source>They go on with it. What you confirm as a second person you then confirm beside them, with your own passphrase.</source>
        <translation>Esa persona sigue con el trabajo. Lo que usted confirma como segunda persona lo confirma entonces a su lado, con su propia frase de contraseña.</translation>
    </message>
</context>
<context>
    <name>SavedFile</name>
    <message>
        <source>Saved: %1</source>
        <translation>Guardado: %1</translation>
    </message>
    <message>
        <source>Hand the file to another app</source>
        <translation>Pasar el archivo a otra aplicación</translation>
    </message>
    <message>
        <source>Hand the file to</source>
        <translation>Pasar el archivo a</translation>
    </message>
</context>
<context>
    <name>ScanView</name>
    <message>
        <source>This device has no camera. Choose a picture of the code.</source>
        <translation>Este dispositivo no tiene cámara. Elija una foto del código.</translation>
    </message>
    <message>
        <source>The phone does not let the app use its camera. Allow it in the phone&apos;s settings, or choose a picture.</source>
        <translation>El teléfono no deja que la aplicación use la cámara. Permítalo en los ajustes del teléfono o elija una imagen.</translation>
    </message>
    <message>
        <source>There is no code in this picture. Take it from nearer and straight from the front, the whole code in it.</source>
        <translation>No hay ningún código en esta foto. Tómela de más cerca y de frente, con todo el código dentro.</translation>
    </message>
    <message>
        <source>Choose a picture of the code</source>
        <translation>Elegir una foto del código</translation>
    </message>
    <message>
        <source>Pictures (%1)</source>
        <translation>Imágenes (%1)</translation>
    </message>
</context>
<context>
    <name>SettingsPage</name>
    <message>
        <source>Settings</source>
        <translation>Ajustes</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Aspecto</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Día</translation>
    </message>
    <message>
        <source>Night</source>
        <translation>Noche</translation>
    </message>
    <message>
        <source>Sunlight</source>
        <translation>Sol</translation>
    </message>
    <message>
        <source>Black on white, thick lines</source>
        <translation>Negro sobre blanco, líneas gruesas</translation>
    </message>
    <message>
        <source>Text size</source>
        <translation>Tamaño del texto</translation>
    </message>
    <message>
        <source>Gloves: larger keys</source>
        <translation>Guantes: teclas más grandes</translation>
    </message>
    <message>
        <source>Wet glass: hold a key for it to count</source>
        <translation>Pantalla mojada: la tecla cuenta si se mantiene pulsada</translation>
    </message>
    <message>
        <source>Sounds and vibration</source>
        <translation>Sonidos y vibración</translation>
    </message>
    <message>
        <source>Speak the instructions</source>
        <translation>Leer en voz alta las instrucciones</translation>
    </message>
    <message>
        <source>Speak the instructions (this phone has no voice in this language)</source>
        <translation>Leer en voz alta las instrucciones (este teléfono no tiene voz en este idioma)</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Unidades</translation>
    </message>
    <message>
        <source>Metric: kg, bar, °C, m</source>
        <translation>Métricas: kg, bar, °C, m</translation>
    </message>
    <message>
        <source>US: lb, psi, °F, in</source>
        <translation>EE. UU.: lb, psi, °F, in</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Idioma</translation>
    </message>
    <message>
        <source>This translation was made by a machine. A native speaker who knows the trade has still to review it.</source>
        <translation>Esta traducción la hizo una máquina. Falta que la revise un hablante nativo que conozca el oficio.</translation>
    </message>
    <message>
        <source>You act as</source>
        <translation>Usted actúa como</translation>
    </message>
    <message>
        <source>People who may sign on this phone</source>
        <translation>Personas que pueden firmar en este teléfono</translation>
    </message>
    <message>
        <source>Live readings</source>
        <translation>Lecturas en vivo</translation>
    </message>
    <message>
        <source>The phone as a level</source>
        <translation>El teléfono como nivel</translation>
    </message>
    <message>
        <source>Lock</source>
        <translation>Bloquear la aplicación</translation>
    </message>
    <message>
        <source>The next person opens it with their own key</source>
        <translation>La siguiente persona la abre con su propia clave</translation>
    </message>
    <message>
        <source>Hingepin %1. The app is free software under the GNU General Public License, version 3 or later; its engine under the Apache License 2.0. It never writes to a machine. A verdict here does not make a scale legal for trade; that needs the authority in charge.</source>
        <translation>Hingepin %1. La aplicación es software libre bajo la GNU General Public License, versión 3 o posterior; su motor, bajo la Apache License 2.0. Nunca escribe en una máquina. Un veredicto de aquí no hace que una báscula sea legal para el comercio; para eso se necesita a la autoridad competente.</translation>
    </message>
    <message>
        <source>Save the app&apos;s log</source>
        <translation>Guardar el registro de la aplicación</translation>
    </message>
    <message>
        <source>What it did and what failed, without names: for whoever looks into a fault</source>
        <translation>Qué hizo y qué falló, sin nombres: para quien investigue un fallo</translation>
    </message>
    <message>
        <source>Exchange with the office</source>
        <translation>Intercambio con la oficina</translation>
    </message>
    <message>
        <source>Where records are sent to, and what still waits</source>
        <translation>Adónde se envían los registros y qué espera aún</translation>
    </message>
    <message>
        <source>How proofs are judged in this yard</source>
        <translation>Cómo se juzgan las comprobaciones en este parque</translation>
    </message>
    <message>
        <source>Tolerance and decision rule, where a unit does not say otherwise</source>
        <translation>Tolerancia y regla de decisión, donde un equipo no dice otra cosa</translation>
    </message>
</context>
<context>
    <name>SignStep</name>
    <message>
        <source>Sign</source>
        <translation>Firmar</translation>
    </message>
    <message>
        <source>Clear the glass</source>
        <translation>Borrar la firma</translation>
    </message>
    <message>
        <source>Absent</source>
        <translation>Ausente</translation>
    </message>
    <message>
        <source>Refused</source>
        <translation>Se negó</translation>
    </message>
    <message>
        <source>You sign as %1, %2, with your key on this phone.</source>
        <translation>Usted firma como %1, %2, con su clave en este teléfono.</translation>
    </message>
</context>
<context>
    <name>SignaturePad</name>
    <message>
        <source>Sign here with a finger</source>
        <translation>Firme aquí con un dedo</translation>
    </message>
</context>
<context>
    <name>StateMark</name>
    <message>
        <source>ready</source>
        <translation>listo</translation>
    </message>
    <message>
        <source>due soon</source>
        <translation>le toca pronto</translation>
    </message>
    <message>
        <source>due</source>
        <translation>le toca ya</translation>
    </message>
    <message>
        <source>restricted</source>
        <translation>con restricciones</translation>
    </message>
    <message>
        <source>do not use</source>
        <translation>no usar</translation>
    </message>
    <message>
        <source>not calibrated</source>
        <translation>sin calibrar</translation>
    </message>
</context>
<context>
    <name>SyncPage</name>
    <message>
        <source>Exchange with the office</source>
        <translation>Intercambio con la oficina</translation>
    </message>
    <message>
        <source>Records, signatures and photos go to a place of the yard&apos;s own and come from there to every phone. What arrives is verified before it counts.</source>
        <translation>Los registros, las firmas y las fotos van a un lugar propio del parque y de ahí llegan a cada teléfono. Lo que llega se verifica antes de que cuente.</translation>
    </message>
    <message>
        <source>The password is not kept for you on this phone. Enter it once.</source>
        <translation>La contraseña no está guardada para usted en este teléfono. Introdúzcala una vez.</translation>
    </message>
    <message>
        <source>Kind of place</source>
        <translation>Tipo de lugar</translation>
    </message>
    <message>
        <source>Share (WebDAV)</source>
        <translation>Recurso compartido (WebDAV)</translation>
    </message>
    <message>
        <source>Object storage (S3)</source>
        <translation>Almacenamiento de objetos (S3)</translation>
    </message>
    <message>
        <source>Address, beginning with https://</source>
        <translation>Dirección, empieza por https://</translation>
    </message>
    <message>
        <source>Bucket</source>
        <translation>Bucket</translation>
    </message>
    <message>
        <source>Region</source>
        <translation>Región</translation>
    </message>
    <message>
        <source>Id of the access key</source>
        <translation>Identificador de la clave de acceso</translation>
    </message>
    <message>
        <source>User name</source>
        <translation>Nombre de usuario</translation>
    </message>
    <message>
        <source>Secret key</source>
        <translation>Clave secreta</translation>
    </message>
    <message>
        <source>Password of the share</source>
        <translation>Contraseña del recurso compartido</translation>
    </message>
    <message>
        <source>By itself, when there is a network</source>
        <translation>Por sí solo, cuando haya red</translation>
    </message>
    <message>
        <source>Also over a network that is paid for by what it carries</source>
        <translation>También por una red que se paga por lo que transporta</translation>
    </message>
    <message>
        <source>Waits to be sent</source>
        <translation>Espera ser enviado</translation>
    </message>
    <message>
        <source>Nothing waits.</source>
        <translation>Nada espera.</translation>
    </message>
    <message>
        <source>since %1</source>
        <translation>desde %1</translation>
    </message>
    <message>
        <source>and %1 more</source>
        <translation>y %1 más</translation>
    </message>
    <message>
        <source>Arrived and not believed</source>
        <translation>Llegado y no creído</translation>
    </message>
    <message>
        <source>Keep this place</source>
        <translation>Guardar este lugar</translation>
    </message>
    <message>
        <source>Send and fetch now</source>
        <translation>Enviar y recoger ahora</translation>
    </message>
    <message>
        <source>Stop for now</source>
        <translation>Parar por ahora</translation>
    </message>
    <message>
        <source>It goes on from here the next time</source>
        <translation>La próxima vez sigue desde aquí</translation>
    </message>
    <message>
        <source>Change the place</source>
        <translation>Cambiar el lugar</translation>
    </message>
    <message>
        <source>Set up the place</source>
        <translation>Configurar el lugar</translation>
    </message>
    <message>
        <source>Certificate of the share&apos;s own authority</source>
        <translation>Certificado de la autoridad propia del recurso</translation>
    </message>
    <message>
        <source>Chosen: %1</source>
        <translation>Elegido: %1</translation>
    </message>
    <message>
        <source>Only where the yard made its certificate itself: choose the file (PEM) that whoever runs the share gives out</source>
        <translation>Solo si el parque emitió él mismo el certificado: elija el archivo (PEM) que entrega quien administra el recurso</translation>
    </message>
    <message>
        <source>Certificates (%1)</source>
        <translation>Certificados (%1)</translation>
    </message>
</context>
<context>
    <name>TagStep</name>
    <message>
        <source>Save the tag as a PDF</source>
        <translation>Guardar la etiqueta como PDF</translation>
    </message>
    <message>
        <source>The tag hangs on the machine</source>
        <translation>La etiqueta cuelga en la máquina</translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation>Guardado: %1</translation>
    </message>
</context>
<context>
    <name>TermsPage</name>
    <message>
        <source>How proofs of %1 are judged</source>
        <translation>Cómo se juzgan las comprobaciones de %1</translation>
    </message>
    <message>
        <source>How proofs are judged in this yard</source>
        <translation>Cómo se juzgan las comprobaciones en este parque</translation>
    </message>
    <message>
        <source>Jobs that begin from now on are judged by it. What is left open here the yard says.</source>
        <translation>Los trabajos que empiecen desde ahora se juzgan por ella. Lo que aquí quede abierto lo dice el parque.</translation>
    </message>
    <message>
        <source>Jobs that begin from now on are judged by it, unless the unit itself says otherwise.</source>
        <translation>Los trabajos que empiecen desde ahora se juzgan por ella, salvo que el propio equipo diga otra cosa.</translation>
    </message>
    <message>
        <source>Tolerance</source>
        <translation>Tolerancia</translation>
    </message>
    <message>
        <source>As the yard says</source>
        <translation>Como dice el parque</translation>
    </message>
    <message>
        <source>As each procedure says</source>
        <translation>Como dice cada procedimiento</translation>
    </message>
    <message>
        <source>A percentage of the load</source>
        <translation>Un porcentaje de la carga</translation>
    </message>
    <message>
        <source>A class of OIML R 76</source>
        <translation>Una clase de OIML R 76</translation>
    </message>
    <message>
        <source>Scales that weigh at rest</source>
        <translation>Básculas que pesan en reposo</translation>
    </message>
    <message>
        <source>A class of OIML R 51, category Y</source>
        <translation>Una clase de OIML R 51, categoría Y</translation>
    </message>
    <message>
        <source>Scales that weigh each load by themselves</source>
        <translation>Básculas que pesan cada carga por sí solas</translation>
    </message>
    <message>
        <source>A class of NIST Handbook 44, 2.20</source>
        <translation>Una clase de NIST Handbook 44, 2.20</translation>
    </message>
    <message>
        <source>Scales in the United States</source>
        <translation>Básculas en los Estados Unidos</translation>
    </message>
    <message>
        <source>Steps of our own</source>
        <translation>Escalones propios</translation>
    </message>
    <message>
        <source>Largest error, up or down, %</source>
        <translation>Error máximo, en ambos sentidos, %</translation>
    </message>
    <message>
        <source>Per cent of</source>
        <translation>Por ciento de</translation>
    </message>
    <message>
        <source>The mass that is lifted</source>
        <translation>La masa que se levanta</translation>
    </message>
    <message>
        <source>The rated payload</source>
        <translation>La carga útil nominal</translation>
    </message>
    <message>
        <source>Class</source>
        <translation>Clase</translation>
    </message>
    <message>
        <source>Scale division d, %1</source>
        <translation>División de escala d, %1</translation>
    </message>
    <message>
        <source>Verification interval e, %1</source>
        <translation>Escalón de verificación e, %1</translation>
    </message>
    <message>
        <source>Which limits</source>
        <translation>Qué límites</translation>
    </message>
    <message>
        <source>Acceptance: new or just repaired</source>
        <translation>De aceptación: nueva o recién reparada</translation>
    </message>
    <message>
        <source>Maintenance: in use</source>
        <translation>De mantenimiento: en uso</translation>
    </message>
    <message>
        <source>Initial: new or just repaired</source>
        <translation>Inicial: nueva o recién reparada</translation>
    </message>
    <message>
        <source>In service</source>
        <translation>En servicio</translation>
    </message>
    <message>
        <source>Loads up to, %1</source>
        <translation>Cargas hasta, %1</translation>
    </message>
    <message>
        <source>Largest error there, %1</source>
        <translation>Error máximo ahí, %1</translation>
    </message>
    <message>
        <source>Remove this step</source>
        <translation>Quitar este escalón</translation>
    </message>
    <message>
        <source>One more step</source>
        <translation>Un escalón más</translation>
    </message>
    <message>
        <source>When is it passed?</source>
        <translation>¿Cuándo se supera?</translation>
    </message>
    <message>
        <source>When its error is within the limit</source>
        <translation>Cuando el error está dentro del límite</translation>
    </message>
    <message>
        <source>Near the limit a wrong verdict is about as likely as a right one</source>
        <translation>Cerca del límite un veredicto erróneo es casi tan probable como uno acertado</translation>
    </message>
    <message>
        <source>When it is plain that its error is within the limit</source>
        <translation>Cuando es seguro que el error está dentro del límite</translation>
    </message>
    <message>
        <source>The doubt of the proof counts against the scale</source>
        <translation>La duda de la comprobación cuenta contra la báscula</translation>
    </message>
    <message>
        <source>How sure, %</source>
        <translation>Con qué seguridad, %</translation>
    </message>
    <message>
        <source>A verdict by any of these does not make a scale legal for trade. That needs the authority in charge.</source>
        <translation>Ningún veredicto por estas reglas hace que una báscula sea legal para el comercio. Para eso hace falta la autoridad competente.</translation>
    </message>
    <message>
        <source>Nothing was saved: see above.</source>
        <translation>No se guardó nada: véase arriba.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Guardar</translation>
    </message>
</context>
<context>
    <name>UnitEditPage</name>
    <message>
        <source>The machine&apos;s own routine</source>
        <translation>La rutina propia de la máquina</translation>
    </message>
    <message>
        <source>Readings typed from its monitor</source>
        <translation>Lecturas de su monitor, escritas a mano</translation>
    </message>
    <message>
        <source>Logs or a live feed</source>
        <translation>Grabaciones o lecturas en vivo</translation>
    </message>
    <message>
        <source>Edit %1</source>
        <translation>Modificar %1</translation>
    </message>
    <message>
        <source>New unit</source>
        <translation>Equipo nuevo</translation>
    </message>
    <message>
        <source>Number or name of the unit</source>
        <translation>Número o nombre del equipo</translation>
    </message>
    <message>
        <source>Rated payload, kg</source>
        <translation>Carga útil nominal, kg</translation>
    </message>
    <message>
        <source>Lift cylinders, how many</source>
        <translation>Cilindros de elevación, cuántos</translation>
    </message>
    <message>
        <source>Lift cylinder bore, mm</source>
        <translation>Cilindro de elevación: diámetro interior, mm</translation>
    </message>
    <message>
        <source>Lift cylinder rod, mm</source>
        <translation>Cilindro de elevación: vástago, mm</translation>
    </message>
    <message>
        <source>Weigh window from boom angle, degrees (if known)</source>
        <translation>Ventana de pesaje: desde el ángulo del brazo, grados (si se conoce)</translation>
    </message>
    <message>
        <source>Weigh window to boom angle, degrees (if known)</source>
        <translation>Ventana de pesaje: hasta el ángulo del brazo, grados (si se conoce)</translation>
    </message>
    <message>
        <source>Oil at least, °C, before pressures are taught (if the manual says)</source>
        <translation>Aceite, mínimo, °C, antes del aprendizaje de las presiones (si lo dice el manual)</translation>
    </message>
    <message>
        <source>Test mass of the yard, kg (if there is one)</source>
        <translation>Masa de prueba del parque, kg (si la hay)</translation>
    </message>
    <message>
        <source>Due again after, hours (if the yard says)</source>
        <translation>Le toca de nuevo tras, horas (si lo dice el parque)</translation>
    </message>
    <message>
        <source>It can be taught by</source>
        <translation>Formas de aprendizaje posibles</translation>
    </message>
    <message>
        <source>Its monitor shows</source>
        <translation>Su monitor muestra</translation>
    </message>
    <message>
        <source>Press the unit in which it shows it; press it again if it does not show it at all. Mind which ton it is.</source>
        <translation>Pulse la unidad en la que lo muestra; púlsela otra vez si no lo muestra. Fíjese en qué tonelada es.</translation>
    </message>
    <message>
        <source>For practice: an invented machine</source>
        <translation>Para practicar: una máquina inventada</translation>
    </message>
    <message>
        <source>Its records say so; the simulated loader may stand in for it</source>
        <translation>Consta en sus registros; la cargadora simulada puede sustituirla</translation>
    </message>
    <message>
        <source>Linkage</source>
        <translation>Varillaje</translation>
    </message>
    <message>
        <source>Its pins are on file: empty passes are enough to calibrate.</source>
        <translation>Los datos de sus pasadores están guardados: para calibrar bastan pasadas en vacío.</translation>
    </message>
    <message>
        <source>Its pins are not known. It can be calibrated with a known mass all the same.</source>
        <translation>No se conocen sus pasadores. Aun así se puede calibrar con una masa conocida.</translation>
    </message>
    <message>
        <source>Read the pins from a file</source>
        <translation>Leer los pasadores de un archivo</translation>
    </message>
    <message>
        <source>Unit or job files (%1)</source>
        <translation>Archivos de equipo o de trabajo (%1)</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Guardar</translation>
    </message>
</context>
<context>
    <name>UnitPage</name>
    <message>
        <source>With %1</source>
        <translation>Con %1</translation>
    </message>
    <message>
        <source>Due again %1</source>
        <translation>Le toca de nuevo: %1</translation>
    </message>
    <message>
        <source>Save its label as a PDF</source>
        <translation>Guardar su rótulo como PDF</translation>
    </message>
    <message>
        <source>Begin a job</source>
        <translation>Empezar un trabajo</translation>
    </message>
    <message>
        <source>Edit the unit</source>
        <translation>Modificar el equipo</translation>
    </message>
    <message>
        <source>Attachments</source>
        <translation>Implementos</translation>
    </message>
    <message>
        <source>Compare check-out and return</source>
        <translation>Comparar salida y devolución</translation>
    </message>
    <message>
        <source>Records</source>
        <translation>Registros</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>Todavía ninguno.</translation>
    </message>
    <message>
        <source>not trusted</source>
        <translation>no es de confianza</translation>
    </message>
    <message>
        <source>corrected</source>
        <translation>corregido</translation>
    </message>
    <message>
        <source>Its zero and span over the months</source>
        <translation>Su cero y su alcance a lo largo de los meses</translation>
    </message>
    <message>
        <source>Stops: what to set</source>
        <translation>Paradas: qué ajustar</translation>
    </message>
    <message>
        <source>A disputed load: what was it worth?</source>
        <translation>Una carga en disputa: ¿cuánto valía?</translation>
    </message>
    <message>
        <source>Something happened to it</source>
        <translation>Le pasó algo</translation>
    </message>
    <message>
        <source>Repaired, welded, overloaded, battery lost: the scale is due again</source>
        <translation>Reparada, soldada, sobrecargada, sin batería: la báscula vuelve a estar pendiente</translation>
    </message>
    <message>
        <source>How its proofs are judged</source>
        <translation>Cómo se juzgan sus comprobaciones</translation>
    </message>
    <message>
        <source>Survey its linkage</source>
        <translation>Medir su varillaje</translation>
    </message>
    <message>
        <source>Its pins are not on file: a tape and an inclinometer find them, and its scale weighs more surely</source>
        <translation>Sus pasadores no están registrados: una cinta y un inclinómetro los hallan, y su báscula pesa con más seguridad</translation>
    </message>
</context>
<context>
    <name>UnlockPage</name>
    <message>
        <source>Demo yard: who are you?</source>
        <translation>Parque de demostración: ¿quién es usted?</translation>
    </message>
    <message>
        <source>Who is at the phone?</source>
        <translation>¿Quién está al teléfono?</translation>
    </message>
    <message>
        <source>Passphrase</source>
        <translation>Frase de contraseña</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Abrir</translation>
    </message>
    <message>
        <source>Another yard</source>
        <translation>Otro parque</translation>
    </message>
    <message>
        <source>All of them are invented. Choose whom you want to be.</source>
        <translation>Todas son inventadas. Elija quién quiere ser.</translation>
    </message>
    <message>
        <source>Choose your name.</source>
        <translation>Elija su nombre.</translation>
    </message>
</context>
<context>
    <name>WaitStep</name>
    <message>
        <source>Compute again</source>
        <translation>Calcular de nuevo</translation>
    </message>
</context>
<context>
    <name>ZoneStep</name>
    <message>
        <source>Hold: the zone is clear</source>
        <translation>Mantener pulsado: zona libre</translation>
    </message>
    <message>
        <source>The machine moves next. Nobody near it, nobody under the boom, everybody in sight.</source>
        <translation>Ahora se mueve la máquina. Nadie cerca de ella, nadie debajo del brazo, todos a la vista.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile</name>
    <message>
        <source>read</source>
        <translation>leído</translation>
    </message>
    <message>
        <source>zone clear</source>
        <translation>zona libre</translation>
    </message>
    <message>
        <source>gone back to do it again</source>
        <translation>se volvió atrás para repetirlo</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>sí</translation>
    </message>
    <message>
        <source>no</source>
        <translation>no</translation>
    </message>
    <message>
        <source>done</source>
        <translation>hecho</translation>
    </message>
    <message>
        <source>did not work</source>
        <translation>falló</translation>
    </message>
    <message>
        <source>photo or file kept</source>
        <translation>foto o archivo guardado</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>omitido</translation>
    </message>
    <message>
        <source>signed</source>
        <translation>firmado</translation>
    </message>
    <message>
        <source>not there to sign</source>
        <translation>ausente</translation>
    </message>
    <message>
        <source>refused to sign</source>
        <translation>se negó</translation>
    </message>
    <message>
        <source>nobody there to confirm</source>
        <translation>nadie para confirmar</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::App</name>
    <message>
        <source>Technician</source>
        <translation>Técnico</translation>
    </message>
    <message>
        <source>Operator</source>
        <translation>Operador</translation>
    </message>
    <message>
        <source>Supervisor</source>
        <translation>Supervisor</translation>
    </message>
    <message>
        <source>Safety lead</source>
        <translation>Responsable de seguridad</translation>
    </message>
    <message>
        <source>Yard checker</source>
        <translation>Revisor del parque</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>Cliente</translation>
    </message>
    <message>
        <source>DANGER</source>
        <translation>PELIGRO</translation>
    </message>
    <message>
        <source>WARNING</source>
        <translation>ADVERTENCIA</translation>
    </message>
    <message>
        <source>CAUTION</source>
        <translation>PRECAUCIÓN</translation>
    </message>
    <message>
        <source>NOTICE</source>
        <translation>AVISO</translation>
    </message>
    <message>
        <source>Last time the app ended in a fault of its own. What was answered is kept: a job opens where it was. Under Settings you can save the log for whoever looks into it.</source>
        <translation>La última vez la aplicación terminó por un fallo propio. Lo respondido se conserva: un trabajo se abre donde estaba. En Ajustes puede guardar el registro para quien lo investigue.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Joiner</name>
    <message>
        <source>You are let in. The yard&apos;s lists did not fit in the code: they come with the next exchange, or as a file. Until then you can&apos;t sign on this phone.</source>
        <translation>Está admitido. Las listas del parque no cabían en el código: llegan con el próximo intercambio, o como archivo. Hasta entonces no puede firmar en este teléfono.</translation>
    </message>
    <message>
        <source>The yard&apos;s key is not on this phone. Let people in on the phone on which the yard was made.</source>
        <translation>La clave del parque no está en este teléfono. Admita a las personas en el teléfono en que se creó el parque.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Level</name>
    <message>
        <source>%1 ± %2</source>
        <translation>%1 ± %2</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Live</name>
    <message>
        <source>%1 can&apos;t be opened: %2</source>
        <translation>No se puede abrir %1: %2</translation>
    </message>
    <message>
        <source>The simulated loader is for practice units only.</source>
        <translation>El cargador simulado es solo para equipos de práctica.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Photos</name>
    <message>
        <source>Practice picture, invented</source>
        <translation>Imagen de práctica, inventada</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Profiles</name>
    <message>
        <source>This file holds no linkage. A unit&apos;s profile, a calibration job, or the linkage alone is needed.</source>
        <translation>Este archivo no contiene ningún varillaje. Se necesita el perfil de un equipo, un trabajo de calibración o solo el varillaje.</translation>
    </message>
    <message>
        <source>Mass on the scale</source>
        <translation>Masa en la báscula</translation>
    </message>
    <message>
        <source>Boom angle</source>
        <translation>Ángulo del brazo</translation>
    </message>
    <message>
        <source>Boom sensor</source>
        <translation>Sensor del brazo</translation>
    </message>
    <message>
        <source>Bucket sensor</source>
        <translation>Sensor del cucharón</translation>
    </message>
    <message>
        <source>Lift pressure, head side</source>
        <translation>Presión de elevación, lado del pistón</translation>
    </message>
    <message>
        <source>Lift pressure, rod side</source>
        <translation>Presión de elevación, lado del vástago</translation>
    </message>
    <message>
        <source>Oil temperature</source>
        <translation>Temperatura del aceite</translation>
    </message>
    <message>
        <source>Operating hours</source>
        <translation>Horas de servicio</translation>
    </message>
    <message>
        <source>Fuel level</source>
        <translation>Nivel de combustible</translation>
    </message>
    <message>
        <source>counts</source>
        <translation>cuentas</translation>
    </message>
    <message>
        <source>Choose a class.</source>
        <translation>Elija una clase.</translation>
    </message>
    <message>
        <source>Type a number from 50 to 99.99.</source>
        <translation>Escriba un número de 50 a 99,99.</translation>
    </message>
    <message>
        <source>Type a number.</source>
        <translation>Escriba un número.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Syncer</name>
    <message>
        <source>You begin each exchange yourself.</source>
        <translation>Usted inicia cada intercambio.</translation>
    </message>
    <message>
        <source>No network now.</source>
        <translation>Ahora no hay red.</translation>
    </message>
    <message>
        <source>This network is paid for by what it carries.</source>
        <translation>Esta red se paga por lo que transporta.</translation>
    </message>
    <message>
        <source>Record or signature</source>
        <translation>Registro o firma</translation>
    </message>
    <message>
        <source>List of who may sign</source>
        <translation>Lista de quién puede firmar</translation>
    </message>
    <message>
        <source>Photo, log or other evidence</source>
        <translation>Foto, registro de datos u otra prueba</translation>
    </message>
    <message>
        <source>A person&apos;s name or photo</source>
        <translation>Nombre o foto de una persona</translation>
    </message>
    <message>
        <source>%1 of %2 parcels sent, %3 received; %4 records new here; evidence: %5 sent, %6 received</source>
        <translation>%1 de %2 paquetes enviados, %3 recibidos; %4 registros nuevos aquí; pruebas: %5 enviadas, %6 recibidas</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Yard</name>
    <message>
        <source>on their own phone</source>
        <translation>en su propio teléfono</translation>
    </message>
</context>
</TS>

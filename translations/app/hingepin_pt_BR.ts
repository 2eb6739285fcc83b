<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="pt_BR">
<context>
    <name>AdmitPage</name>
    <message>
        <source>Add somebody</source>
        <translation>Admitir alguém</translation>
    </message>
    <message>
        <source>On their own phone they press &quot;Join a yard&quot; at the first start. Hold this phone over the code that it then shows.</source>
        <translation>No próprio telefone, a pessoa toca em “Entrar em um pátio” no primeiro início. Segure este telefone sobre o código que aparece lá.</translation>
    </message>
    <message>
        <source>A key on the list counts as that person&apos;s signature.</source>
        <translation>Uma chave na lista vale como a assinatura dessa pessoa.</translation>
    </message>
    <message>
        <source>Whoever holds it confirms in their name that a machine is safe. If it is somebody else, people can be hurt.</source>
        <translation>Quem a tem confirma em nome dela que uma máquina está segura. Se for outra pessoa, alguém pode se ferir.</translation>
    </message>
    <message>
        <source>Let in only who stands before you. Compare name and key on both screens.</source>
        <translation>Admita só quem está na sua frente. Compare o nome e a chave nas duas telas.</translation>
    </message>
    <message>
        <source>%1 is on the list. Let their phone read this code.</source>
        <translation>%1 está na lista. Deixe o outro telefone ler este código.</translation>
    </message>
    <message>
        <source>Code that lets the other phone in</source>
        <translation>Código que admite o outro telefone</translation>
    </message>
    <message>
        <source>The yard&apos;s lists do not fit in the code. Their phone can sign once it has them: with the next exchange, or as a file.</source>
        <translation>As listas do pátio não cabem no código. O outro telefone pode assinar quando as tiver: com a próxima troca, ou como arquivo.</translation>
    </message>
    <message>
        <source>Their key begins with %1</source>
        <translation>A chave dela começa com %1</translation>
    </message>
    <message>
        <source>Asked at %1 by the clock of that phone</source>
        <translation>Pedido às %1 pelo relógio daquele telefone</translation>
    </message>
    <message>
        <source>They sign as</source>
        <translation>Assina como</translation>
    </message>
    <message>
        <source>The yard&apos;s passphrase</source>
        <translation>A frase secreta do pátio</translation>
    </message>
    <message>
        <source>Let them in</source>
        <translation>Admitir</translation>
    </message>
    <message>
        <source>No, it is somebody else</source>
        <translation>Não, é outra pessoa</translation>
    </message>
    <message>
        <source>The other phone has read it</source>
        <translation>O outro telefone já leu</translation>
    </message>
</context>
<context>
    <name>AnswerPage</name>
    <message>
        <source>Confirm for another phone</source>
        <translation>Confirmar para outro telefone</translation>
    </message>
    <message>
        <source>On the other phone somebody presses &quot;Ask another phone&quot; at the step that you are to confirm. Hold this phone over its code.</source>
        <translation>No outro telefone alguém toca em &quot;Perguntar a outro telefone&quot; no passo que você vai confirmar. Segure este telefone sobre o código dele.</translation>
    </message>
    <message>
        <source>Others go to work by what you confirm.</source>
        <translation>Outros vão trabalhar com base no que você confirma.</translation>
    </message>
    <message>
        <source>If it is not so, the machine can start or the boom can come down on them.</source>
        <translation>Se não for assim, a máquina pode ligar ou a lança pode descer sobre eles.</translation>
    </message>
    <message>
        <source>Go to the machine and look for yourself. Confirm only what you have seen. Local rules and the maker&apos;s manual come first.</source>
        <translation>Vá até a máquina e olhe você mesmo. Confirme só o que viu. As normas locais e o manual do fabricante vêm primeiro.</translation>
    </message>
    <message>
        <source>%1 with %2</source>
        <translation>%1 com %2</translation>
    </message>
    <message>
        <source>%1 asks, at %2 by the clock of that phone</source>
        <translation>%1 pergunta, às %2 pelo relógio daquele telefone</translation>
    </message>
    <message>
        <source>Said there just before:</source>
        <translation>Dito ali logo antes:</translation>
    </message>
    <message>
        <source>You can&apos;t answer this. It is for: %1</source>
        <translation>Você não pode responder a isto. É para: %1</translation>
    </message>
    <message>
        <source>Your answer: yes. Let the other phone read this code.</source>
        <translation>Sua resposta: sim. Deixe o outro telefone ler este código.</translation>
    </message>
    <message>
        <source>Your answer: no. Let the other phone read this code.</source>
        <translation>Sua resposta: não. Deixe o outro telefone ler este código.</translation>
    </message>
    <message>
        <source>Code of your answer</source>
        <translation>Código da sua resposta</translation>
    </message>
    <message>
        <source>I confirm it</source>
        <translation>Confirmo</translation>
    </message>
    <message>
        <source>Sealed with your key: %1</source>
        <translation>Selado com sua chave: %1</translation>
    </message>
    <message>
        <source>No, it is not so</source>
        <translation>Não, não é assim</translation>
    </message>
    <message>
        <source>The other phone has read it</source>
        <translation>O outro telefone já leu</translation>
    </message>
</context>
<context>
    <name>AskPage</name>
    <message>
        <source>Ask another phone</source>
        <translation>Perguntar a outro telefone</translation>
    </message>
    <message>
        <source>1. The second person opens &quot;Confirm for another phone&quot; on the first page of their own phone and reads this code. It holds for 15 minutes.</source>
        <translation>1. A segunda pessoa abre &quot;Confirmar para outro telefone&quot; na primeira página do próprio telefone e lê este código. Ele vale por 15 minutos.</translation>
    </message>
    <message>
        <source>Code that asks for the confirmation</source>
        <translation>Código que pede a confirmação</translation>
    </message>
    <message>
        <source>2. They look for themself and answer. Then read the code that their phone shows.</source>
        <translation>2. Ela olha por si mesma e responde. Depois leia o código que o telefone dela mostra.</translation>
    </message>
    <message>
        <source>Hold this phone over the other one, so that the whole code of the answer is in the picture.</source>
        <translation>Segure este telefone sobre o outro, com todo o código da resposta na imagem.</translation>
    </message>
    <message>
        <source>Read their answer</source>
        <translation>Ler a resposta</translation>
    </message>
    <message>
        <source>Ask again with a new code</source>
        <translation>Perguntar de novo com outro código</translation>
    </message>
</context>
<context>
    <name>AttachmentEditPage</name>
    <message>
        <source>Number or name of the attachment</source>
        <translation>Número ou nome do implemento</translation>
    </message>
    <message>
        <source>Quick coupler, kg</source>
        <translation>Engate rápido, kg</translation>
    </message>
    <message>
        <source>Bucket, kg</source>
        <translation>Caçamba, kg</translation>
    </message>
    <message>
        <source>Load&apos;s centre along the bucket floor from the hinge pin, mm</source>
        <translation>Centro da carga ao longo do fundo da caçamba a partir do pino de articulação, mm</translation>
    </message>
    <message>
        <source>Load&apos;s centre square to the floor, mm</source>
        <translation>Centro da carga perpendicular ao fundo, mm</translation>
    </message>
    <message>
        <source>Heel along the floor, mm</source>
        <translation>Calcanhar ao longo do fundo, mm</translation>
    </message>
    <message>
        <source>Heel square to the floor, mm</source>
        <translation>Calcanhar perpendicular ao fundo, mm</translation>
    </message>
    <message>
        <source>Cutting edge along the floor, mm</source>
        <translation>Borda cortante ao longo do fundo, mm</translation>
    </message>
    <message>
        <source>Cutting edge square to the floor, mm</source>
        <translation>Borda cortante perpendicular ao fundo, mm</translation>
    </message>
    <message>
        <source>Upper stop: cutting edge above ground, mm</source>
        <translation>Parada superior: borda cortante acima do chão, mm</translation>
    </message>
    <message>
        <source>Lower stop: cutting edge above ground, mm</source>
        <translation>Parada inferior: borda cortante acima do chão, mm</translation>
    </message>
    <message>
        <source>Edit %1</source>
        <translation>Editar %1</translation>
    </message>
    <message>
        <source>New attachment</source>
        <translation>Novo implemento</translation>
    </message>
    <message>
        <source>What is not known stays empty. Without masses and a load centre a known mass is needed to calibrate.</source>
        <translation>O que não se sabe fica vazio. Sem as massas e um centro da carga, é preciso uma massa conhecida para calibrar.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Salvar</translation>
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
        <translation>Nenhum ainda.</translation>
    </message>
    <message>
        <source>Add an attachment</source>
        <translation>Incluir um implemento</translation>
    </message>
</context>
<context>
    <name>BeginPage</name>
    <message>
        <source>Begin a job on %1</source>
        <translation>Começar um serviço em %1</translation>
    </message>
    <message>
        <source>Must have been done before: %1</source>
        <translation>Precisa ter sido feito antes: %1</translation>
    </message>
    <message>
        <source>Have at hand: %1</source>
        <translation>Tenha à mão: %1</translation>
    </message>
    <message>
        <source>Way</source>
        <translation>Caminho</translation>
    </message>
    <message>
        <source>Fitted attachment</source>
        <translation>Implemento montado</translation>
    </message>
    <message>
        <source>If nobody is here to confirm what a second person should</source>
        <translation>Se não houver ninguém aqui para confirmar o que uma segunda pessoa deve confirmar</translation>
    </message>
    <message>
        <source>Wait for somebody</source>
        <translation>Esperar por alguém</translation>
    </message>
    <message>
        <source>A look from afar, by photo</source>
        <translation>Ver de longe, por foto</translation>
    </message>
    <message>
        <source>Go on, marked as unconfirmed</source>
        <translation>Continuar, marcado como não confirmado</translation>
    </message>
    <message>
        <source>(empty where the attachment says it)</source>
        <translation>(vazio onde o implemento já informa)</translation>
    </message>
    <message>
        <source>Rated payload</source>
        <translation>Carga útil nominal</translation>
    </message>
    <message>
        <source>Wanted upper stop, cutting edge above ground</source>
        <translation>Parada superior desejada, borda cortante acima do chão</translation>
    </message>
    <message>
        <source>Test mass</source>
        <translation>Massa de teste</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Começar</translation>
    </message>
    <message>
        <source>Another procedure</source>
        <translation>Outro procedimento</translation>
    </message>
    <message>
        <source>What is to be done?</source>
        <translation>O que deve ser feito?</translation>
    </message>
</context>
<context>
    <name>BrokenPage</name>
    <message>
        <source>The yard can&apos;t be opened</source>
        <translation>Não é possível abrir o pátio</translation>
    </message>
    <message>
        <source>Nothing was changed. Keep the folder as it is, and restore a backup beside it if you have one.</source>
        <translation>Nada foi mudado. Deixe a pasta como está e restaure uma cópia de segurança ao lado dela, se tiver uma.</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>Tentar de novo</translation>
    </message>
    <message>
        <source>Open another yard</source>
        <translation>Abrir outro pátio</translation>
    </message>
</context>
<context>
    <name>CameraView</name>
    <message>
        <source>Release the shutter</source>
        <translation>Tirar a foto</translation>
    </message>
</context>
<context>
    <name>CautionStep</name>
    <message>
        <source>I have read this</source>
        <translation>Li isto</translation>
    </message>
</context>
<context>
    <name>CertificatePage</name>
    <message>
        <source>Calibration certificate</source>
        <translation>Certificado de calibração</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Idioma</translation>
    </message>
    <message>
        <source>What you state here is not part of the sealed record, and the certificate says so. It may stay empty.</source>
        <translation>O que você informar aqui não faz parte do registro selado, e o certificado diz isso. Pode ficar vazio.</translation>
    </message>
    <message>
        <source>Calibrated by: name and address</source>
        <translation>Calibrado por: nome e endereço</translation>
    </message>
    <message>
        <source>For whom: name and address</source>
        <translation>Para quem: nome e endereço</translation>
    </message>
    <message>
        <source>Where it was done</source>
        <translation>Onde foi feito</translation>
    </message>
    <message>
        <source>Country: two capital letters</source>
        <translation>País: duas letras maiúsculas</translation>
    </message>
    <message>
        <source>Two capital letters (ISO 3166-1), as in DE</source>
        <translation>Duas letras maiúsculas (ISO 3166-1), como DE</translation>
    </message>
    <message>
        <source>Certificates of the test masses or of the truck scale</source>
        <translation>Certificados das massas de teste ou da balança rodoviária</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papel</translation>
    </message>
    <message>
        <source>Save as a PDF</source>
        <translation>Salvar como PDF</translation>
    </message>
    <message>
        <source>Save as a web page</source>
        <translation>Salvar como página web</translation>
    </message>
    <message>
        <source>One HTML file that needs nothing beside it</source>
        <translation>Um arquivo HTML que não precisa de mais nada</translation>
    </message>
    <message>
        <source>Save for programs</source>
        <translation>Salvar para programas</translation>
    </message>
    <message>
        <source>A Digital Calibration Certificate (DCC, XML)</source>
        <translation>Um certificado de calibração digital (DCC, XML)</translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation>Salvo: %1</translation>
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
        <translation>Nada foi gravado nem comprovado que um gráfico possa mostrar.</translation>
    </message>
</context>
<context>
    <name>ComparePage</name>
    <message>
        <source>Check-out and return compared</source>
        <translation>Saída e devolução comparadas</translation>
    </message>
    <message>
        <source>Nothing differs that was read or answered.</source>
        <translation>Nada do que foi lido ou respondido é diferente.</translation>
    </message>
    <message>
        <source>The record of the check-out</source>
        <translation>O registro da saída</translation>
    </message>
    <message>
        <source>The record of the return</source>
        <translation>O registro da devolução</translation>
    </message>
</context>
<context>
    <name>ConfirmStep</name>
    <message>
        <source>Yes</source>
        <translation>Sim</translation>
    </message>
    <message>
        <source>No</source>
        <translation>Não</translation>
    </message>
    <message>
        <source>I confirm it</source>
        <translation>Confirmo</translation>
    </message>
    <message>
        <source>No, it is not so</source>
        <translation>Não, não é assim</translation>
    </message>
    <message>
        <source>Nobody is here to confirm</source>
        <translation>Ninguém aqui para confirmar</translation>
    </message>
    <message>
        <source>The record will say so</source>
        <translation>O registro vai dizer isso</translation>
    </message>
    <message>
        <source>A second person looks for themself and confirms: %1</source>
        <translation>Uma segunda pessoa olha por si mesma e confirma: %1</translation>
    </message>
    <message>
        <source>Their passphrase</source>
        <translation>Frase secreta da pessoa</translation>
    </message>
    <message>
        <source>Ask another phone</source>
        <translation>Perguntar a outro telefone</translation>
    </message>
    <message>
        <source>By a code, from screen to camera; no network is needed</source>
        <translation>Por um código, da tela para a câmera; não precisa de rede</translation>
    </message>
    <message>
        <source>No such person has a key on this phone. Ask another phone, or add one under People.</source>
        <translation>Nenhuma pessoa assim tem chave neste telefone. Pergunte a outro telefone ou adicione alguém em Pessoas.</translation>
    </message>
</context>
<context>
    <name>DisputePage</name>
    <message>
        <source>What was this scale worth?</source>
        <translation>Quanto valia esta balança?</translation>
    </message>
    <message>
        <source>%1 with %2</source>
        <translation>%1 com %2</translation>
    </message>
    <message>
        <source>Day of the load, as 2026-05-04</source>
        <translation>Dia da carga, como 2026-05-04</translation>
    </message>
    <message>
        <source>Year, month and day, as 2026-05-04</source>
        <translation>Ano, mês e dia, como 2026-05-04</translation>
    </message>
    <message>
        <source>Tell</source>
        <translation>Dizer</translation>
    </message>
    <message>
        <source>Save it with the records behind it</source>
        <translation>Salvar com os registros por trás</translation>
    </message>
    <message>
        <source>A folder that any program for these records can verify</source>
        <translation>Uma pasta que qualquer programa para estes registros pode verificar</translation>
    </message>
</context>
<context>
    <name>DoubtStep</name>
    <message>
        <source>I meant %1</source>
        <translation>Eu quis dizer %1</translation>
    </message>
    <message>
        <source>Type it again</source>
        <translation>Digitar de novo</translation>
    </message>
    <message>
        <source>It is %1</source>
        <translation>É %1 mesmo</translation>
    </message>
    <message>
        <source>The record will say that it was doubted and confirmed</source>
        <translation>O registro vai dizer que houve dúvida e que foi confirmado</translation>
    </message>
    <message>
        <source>%1: can that be?</source>
        <translation>%1: pode ser?</translation>
    </message>
    <message>
        <source>Usual is between %1 and %2. Look for a slipped decimal mark or another unit.</source>
        <translation>O usual fica entre %1 e %2. Procure uma vírgula fora do lugar ou outra unidade.</translation>
    </message>
    <message>
        <source>Enter %1 %2</source>
        <translation>Inserir %1 %2</translation>
    </message>
</context>
<context>
    <name>EndStep</name>
    <message>
        <source>Seal the record</source>
        <translation>Selar o registro</translation>
    </message>
    <message>
        <source>Show the record</source>
        <translation>Mostrar o registro</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Feito</translation>
    </message>
    <message>
        <source>Failed: do not use this scale</source>
        <translation>Falhou: não use esta balança</translation>
    </message>
    <message>
        <source>Given up: do not use this scale</source>
        <translation>Abandonado: não use esta balança</translation>
    </message>
    <message>
        <source>Sealed with your key. Nobody can change it without it showing.</source>
        <translation>Selado com sua chave. Ninguém pode alterá-lo sem que se perceba.</translation>
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
        <translation>O que aconteceu com %1?</translation>
    </message>
    <message>
        <source>It is sealed with your key as a record of its own. From then on the scale is due, until it is proved again.</source>
        <translation>É selado com a sua chave como um registro próprio. A partir daí a balança está vencida, até ser comprovada de novo.</translation>
    </message>
    <message>
        <source>What happened</source>
        <translation>O que aconteceu</translation>
    </message>
    <message>
        <source>With which attachment</source>
        <translation>Com qual implemento</translation>
    </message>
    <message>
        <source>With any of them</source>
        <translation>Com qualquer um deles</translation>
    </message>
    <message>
        <source>In your words (may stay empty)</source>
        <translation>Nas suas palavras (pode ficar vazio)</translation>
    </message>
    <message>
        <source>Seal it</source>
        <translation>Selar</translation>
    </message>
</context>
<context>
    <name>EvidenceStep</name>
    <message>
        <source>Take a photo</source>
        <translation>Tirar uma foto</translation>
    </message>
    <message>
        <source>Use a practice picture</source>
        <translation>Usar uma imagem de prática</translation>
    </message>
    <message>
        <source>Invented, and marked so</source>
        <translation>Inventada, e marcada como tal</translation>
    </message>
    <message>
        <source>Choose a picture</source>
        <translation>Escolher uma imagem</translation>
    </message>
    <message>
        <source>Choose a file</source>
        <translation>Escolher um arquivo</translation>
    </message>
    <message>
        <source>Leave it out</source>
        <translation>Omitir</translation>
    </message>
    <message>
        <source>Pictures (%1)</source>
        <translation>Imagens (%1)</translation>
    </message>
    <message>
        <source>All files (%1)</source>
        <translation>Todos os arquivos (%1)</translation>
    </message>
    <message>
        <source>The phone does not let the app use its camera. Allow it in the phone&apos;s settings, or choose a picture.</source>
        <translation>O telefone não deixa o app usar a câmera. Permita nas configurações do telefone ou escolha uma imagem.</translation>
    </message>
</context>
<context>
    <name>FeedPage</name>
    <message>
        <source>Live readings</source>
        <translation>Leituras ao vivo</translation>
    </message>
    <message>
        <source>Readings come as lines of a lift log (CSV): from a sensor gateway over the network, from a file that is played back, or from the simulated loader for practice.</source>
        <translation>As leituras chegam como linhas de uma gravação de elevação (CSV): de um gateway de sensores pela rede, de um arquivo que é reproduzido, ou da carregadeira simulada, para prática.</translation>
    </message>
    <message>
        <source>None</source>
        <translation>Nenhuma</translation>
    </message>
    <message>
        <source>Simulated loader</source>
        <translation>Carregadeira simulada</translation>
    </message>
    <message>
        <source>Invented; for practice units</source>
        <translation>Inventada; para equipamentos de prática</translation>
    </message>
    <message>
        <source>A file, played back</source>
        <translation>Um arquivo, reproduzido</translation>
    </message>
    <message>
        <source>Sensor gateway (TCP)</source>
        <translation>Gateway de sensores (TCP)</translation>
    </message>
    <message>
        <source>Address of the gateway, host:port</source>
        <translation>Endereço do gateway, host:porta</translation>
    </message>
    <message>
        <source>%1 readings a second</source>
        <translation>Leituras por segundo: %1</translation>
    </message>
    <message>
        <source>Lift logs (%1)</source>
        <translation>Gravações de elevação (%1)</translation>
    </message>
    <message>
        <source>Practise what goes wrong</source>
        <translation>Praticar o que dá errado</translation>
    </message>
    <message>
        <source>The simulated loader can misbehave, from its next movement on, as if it were so on the machine. What the job then says and asks for is part of the practice.</source>
        <translation>A carregadeira simulada pode se comportar mal a partir do próximo movimento, como se a máquina estivesse assim. O que o trabalho então diz e pede faz parte da prática.</translation>
    </message>
    <message>
        <source>The loader misbehaves</source>
        <translation>A carregadeira se comporta mal</translation>
    </message>
    <message>
        <source>No, all is well</source>
        <translation>Não, está tudo bem</translation>
    </message>
    <message>
        <source>All is well</source>
        <translation>Está tudo bem</translation>
    </message>
    <message>
        <source>Cut the readings off for 10 seconds</source>
        <translation>Cortar as leituras por 10 segundos</translation>
    </message>
    <message>
        <source>As when a plug comes off; they come back by themselves</source>
        <translation>Como quando um conector se solta; voltam sozinhas</translation>
    </message>
</context>
<context>
    <name>FirstStartPage</name>
    <message>
        <source>Calibrates the scale and the automatic stops of a wheel loader, step by step, with no signal needed, and keeps a signed record.</source>
        <translation>Calibra a balança e as paradas automáticas de uma carregadeira de rodas, passo a passo, sem precisar de sinal, e guarda um registro assinado.</translation>
    </message>
    <message>
        <source>The law and the rules of the site, the machine maker&apos;s manual and licensed practice come first.</source>
        <translation>A lei e as regras do local, o manual do fabricante da máquina e a prática de profissionais habilitados vêm antes.</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Idioma</translation>
    </message>
    <message>
        <source>Making the demo yard: %1 %</source>
        <translation>Criando o pátio de demonstração: %1 %</translation>
    </message>
    <message>
        <source>Make my yard</source>
        <translation>Criar meu pátio</translation>
    </message>
    <message>
        <source>Your key and the yard&apos;s list of who may sign</source>
        <translation>Sua chave e a lista do pátio de quem pode assinar</translation>
    </message>
    <message>
        <source>Look round the demo yard</source>
        <translation>Conhecer o pátio de demonstração</translation>
    </message>
    <message>
        <source>Invented machines, people and records, to practise on</source>
        <translation>Máquinas, pessoas e registros inventados, para praticar</translation>
    </message>
    <message>
        <source>Join a yard</source>
        <translation>Entrar em um pátio</translation>
    </message>
    <message>
        <source>It is on another phone, whose owner lets you in</source>
        <translation>Está em outro telefone, cujo dono admite você</translation>
    </message>
</context>
<context>
    <name>Flash</name>
    <message>
        <source>Once more</source>
        <translation>Mais uma vez</translation>
    </message>
    <message>
        <source>Pass complete</source>
        <translation>Passada completa</translation>
    </message>
    <message>
        <source>Held</source>
        <translation>Posição mantida</translation>
    </message>
</context>
<context>
    <name>Frame</name>
    <message>
        <source>Back</source>
        <translation>Voltar</translation>
    </message>
    <message>
        <source>Working</source>
        <translation>Processando</translation>
    </message>
</context>
<context>
    <name>HistoryChart</name>
    <message>
        <source>It may lie between %1 and %2.</source>
        <translation>Pode estar entre %1 e %2.</translation>
    </message>
    <message numerus="yes">
        <source>%n reading(s) from %1 to %2, between %3 and %4, the last %5.</source>
        <translation>
            <numerusform>%n leitura de %1 a %2, entre %3 e %4, a última %5.</numerusform>
            <numerusform>%n leituras de %1 a %2, entre %3 e %4, a última %5.</numerusform>
        </translation>
    </message>
    <message>
        <source>Measured</source>
        <translation>Medido</translation>
    </message>
    <message>
        <source>Tolerance</source>
        <translation>Tolerância</translation>
    </message>
    <message>
        <source>Taught anew</source>
        <translation>Ensinada de novo</translation>
    </message>
</context>
<context>
    <name>HistoryPage</name>
    <message>
        <source>%1 with %2</source>
        <translation>%1 com %2</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>Nenhum ainda.</translation>
    </message>
    <message>
        <source>Zero</source>
        <translation>Zero</translation>
    </message>
    <message>
        <source>What it showed with an empty bucket, as found, in %1</source>
        <translation>O que indicou com a caçamba vazia, como encontrada, em %1</translation>
    </message>
    <message>
        <source>Span</source>
        <translation>Amplitude</translation>
    </message>
    <message>
        <source>What it showed of a known mass less its zero, in % of that mass</source>
        <translation>O que indicou de uma massa conhecida menos o seu zero, em % dessa massa</translation>
    </message>
    <message>
        <source>Errors of the proofs</source>
        <translation>Erros das comprovações</translation>
    </message>
    <message>
        <source>In % of the known mass</source>
        <translation>Em % da massa conhecida</translation>
    </message>
</context>
<context>
    <name>HoldStep</name>
    <message>
        <source>It was disturbed: begin again</source>
        <translation>Foi perturbado: comece de novo</translation>
    </message>
    <message>
        <source>Begin: %1</source>
        <translation>Começar: %1</translation>
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
        <translation>Falhou</translation>
    </message>
</context>
<context>
    <name>HomePage</name>
    <message>
        <source>Demo yard (invented)</source>
        <translation>Pátio de demonstração (inventado)</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message numerus="yes">
        <source>%n unit(s) must not be used</source>
        <translation>
            <numerusform>%n equipamento não pode ser usado</numerusform>
            <numerusform>%n equipamentos não podem ser usados</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n unit(s) due now or soon</source>
        <translation>
            <numerusform>%n equipamento vence agora ou em breve</numerusform>
            <numerusform>%n equipamentos vencem agora ou em breve</numerusform>
        </translation>
    </message>
    <message>
        <source>Waiting for a second person</source>
        <translation>À espera de uma segunda pessoa</translation>
    </message>
    <message>
        <source>Nothing waits.</source>
        <translation>Nada à espera.</translation>
    </message>
    <message>
        <source>%1, since %2</source>
        <translation>%1, desde %2</translation>
    </message>
    <message>
        <source>Confirmed lately</source>
        <translation>Confirmado há pouco</translation>
    </message>
    <message>
        <source>Out on hire</source>
        <translation>Em locação</translation>
    </message>
    <message>
        <source>No unit is out.</source>
        <translation>Nenhum equipamento em locação.</translation>
    </message>
    <message>
        <source>since %1</source>
        <translation>desde %1</translation>
    </message>
    <message>
        <source>Go on with</source>
        <translation>Continuar com</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Equipamentos</translation>
    </message>
    <message>
        <source>No unit yet. Add the first one below.</source>
        <translation>Nenhum equipamento ainda. Inclua o primeiro abaixo.</translation>
    </message>
    <message>
        <source>locked out</source>
        <translation>bloqueado</translation>
    </message>
    <message>
        <source>Add a unit</source>
        <translation>Incluir um equipamento</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Configurações</translation>
    </message>
    <message>
        <source>Confirm for another phone</source>
        <translation>Confirmar para outro telefone</translation>
    </message>
    <message>
        <source>Reads the code by which it asks</source>
        <translation>Lê o código com que ele pergunta</translation>
    </message>
</context>
<context>
    <name>JobMorePage</name>
    <message>
        <source>This job</source>
        <translation>Este serviço</translation>
    </message>
    <message>
        <source>Go on later</source>
        <translation>Continuar depois</translation>
    </message>
    <message>
        <source>Nothing is lost; it opens again at this step</source>
        <translation>Nada se perde; ele abre de novo nesta etapa</translation>
    </message>
    <message>
        <source>Give the job up</source>
        <translation>Abandonar o serviço</translation>
    </message>
    <message>
        <source>The job then ends as given up: the machine is made safe, and its scale is tagged not to be used.</source>
        <translation>O serviço então termina como abandonado: a máquina é deixada em segurança, e a balança dela recebe a etiqueta de não usar.</translation>
    </message>
    <message>
        <source>Hold to give up</source>
        <translation>Segure para abandonar</translation>
    </message>
    <message>
        <source>Keep on working</source>
        <translation>Continuar trabalhando</translation>
    </message>
    <message>
        <source>Done so far, the newest first</source>
        <translation>Feito até agora, o mais recente primeiro</translation>
    </message>
    <message>
        <source>(does not count)</source>
        <translation>(não conta)</translation>
    </message>
    <message>
        <source>Live readings</source>
        <translation>Leituras ao vivo</translation>
    </message>
    <message>
        <source>None are open</source>
        <translation>Nenhuma está aberta</translation>
    </message>
    <message>
        <source>They are coming</source>
        <translation>Estão chegando</translation>
    </message>
    <message>
        <source>They have stopped</source>
        <translation>Pararam</translation>
    </message>
    <message>
        <source>Charts</source>
        <translation>Gráficos</translation>
    </message>
    <message>
        <source>Passes, what the fit leaves, errors of the proof</source>
        <translation>Passadas, o que o ajuste deixa, erros da comprovação</translation>
    </message>
</context>
<context>
    <name>JobPage</name>
    <message>
        <source>%1 with %2</source>
        <translation>%1 com %2</translation>
    </message>
    <message>
        <source>practice, invented</source>
        <translation>prática, inventado</translation>
    </message>
    <message>
        <source>Step %1 of %2</source>
        <translation>Etapa %1 de %2</translation>
    </message>
    <message>
        <source>The job has stopped. Make the machine safe first.</source>
        <translation>O serviço parou. Deixe antes a máquina em segurança.</translation>
    </message>
    <message>
        <source>Not passed</source>
        <translation>Não aprovado</translation>
    </message>
    <message>
        <source>It was: %1</source>
        <translation>Foi: %1</translation>
    </message>
    <message>
        <source>Do this now:</source>
        <translation>Faça isto agora:</translation>
    </message>
    <message>
        <source>Do the last step again</source>
        <translation>Refazer a última etapa</translation>
    </message>
    <message>
        <source>What was said stays on the record and no longer counts</source>
        <translation>O que foi dito fica no registro e não conta mais</translation>
    </message>
    <message>
        <source>All that was done so far, giving up, going on later</source>
        <translation>Tudo o que foi feito até agora, abandonar, continuar depois</translation>
    </message>
    <message>
        <source>What the survey found</source>
        <translation>O que a medição encontrou</translation>
    </message>
</context>
<context>
    <name>JoinPage</name>
    <message>
        <source>Join a yard</source>
        <translation>Entrar em um pátio</translation>
    </message>
    <message>
        <source>The yard is on another phone. This one makes a key of your own, and asks that phone to let you in.</source>
        <translation>O pátio está em outro telefone. Este cria uma chave sua e pede àquele que admita você.</translation>
    </message>
    <message>
        <source>Your name</source>
        <translation>Seu nome</translation>
    </message>
    <message>
        <source>Passphrase: 12 characters or more, a few words are best</source>
        <translation>Frase secreta: 12 caracteres ou mais, o melhor são algumas palavras</translation>
    </message>
    <message>
        <source>The same passphrase again</source>
        <translation>A mesma frase secreta de novo</translation>
    </message>
    <message>
        <source>This is not the same.</source>
        <translation>Não é a mesma.</translation>
    </message>
    <message>
        <source>It locks your signing key on this phone. Nobody can recover it: if it is lost, you join again with a new key.</source>
        <translation>Ela tranca sua chave de assinatura neste celular. Ninguém pode recuperá-la: se for perdida, entre de novo com uma chave nova.</translation>
    </message>
    <message>
        <source>Make my key</source>
        <translation>Criar minha chave</translation>
    </message>
</context>
<context>
    <name>JoiningPage</name>
    <message>
        <source>Join a yard</source>
        <translation>Entrar em um pátio</translation>
    </message>
    <message>
        <source>Code that asks to be let in</source>
        <translation>Código que pede para entrar</translation>
    </message>
    <message>
        <source>Your key begins with %1</source>
        <translation>Sua chave começa com %1</translation>
    </message>
    <message>
        <source>1. On the phone that has the yard&apos;s key, open Settings, People, &quot;Add somebody on their own phone&quot;, and read this code. It holds for a day.</source>
        <translation>1. No telefone que tem a chave do pátio, abra Configurações, Pessoas, “Admitir alguém no próprio telefone” e leia este código. Ele vale um dia.</translation>
    </message>
    <message>
        <source>2. Compare on both screens how the key begins. Then read the code that the other phone shows.</source>
        <translation>2. Compare nas duas telas como a chave começa. Depois leia o código que o outro telefone mostra.</translation>
    </message>
    <message>
        <source>Hold this phone over the yard&apos;s phone, so that the whole code is in the picture.</source>
        <translation>Segure este telefone sobre o do pátio, com todo o código na imagem.</translation>
    </message>
    <message>
        <source>Your passphrase, to make a new code</source>
        <translation>Sua frase secreta, para criar um código novo</translation>
    </message>
    <message>
        <source>Make a new code</source>
        <translation>Criar um código novo</translation>
    </message>
    <message>
        <source>Make a yard of my own instead</source>
        <translation>Criar um pátio meu em vez disso</translation>
    </message>
    <message>
        <source>The key that was made here is then removed. If it has been let in already, have it revoked.</source>
        <translation>A chave criada aqui é então removida. Se já foi admitida, peça que a revoguem.</translation>
    </message>
    <message>
        <source>Hold to remove the key</source>
        <translation>Segure para remover a chave</translation>
    </message>
    <message>
        <source>Keep the key</source>
        <translation>Manter a chave</translation>
    </message>
    <message>
        <source>Read the yard&apos;s code</source>
        <translation>Ler o código do pátio</translation>
    </message>
    <message>
        <source>Make the code</source>
        <translation>Criar o código</translation>
    </message>
    <message>
        <source>Show my code again</source>
        <translation>Mostrar meu código de novo</translation>
    </message>
</context>
<context>
    <name>Keypad</name>
    <message>
        <source>Delete the last digit</source>
        <translation>Apagar o último algarismo</translation>
    </message>
    <message>
        <source>Plus or minus</source>
        <translation>Mais ou menos</translation>
    </message>
    <message>
        <source>Decimal mark</source>
        <translation>Vírgula decimal</translation>
    </message>
</context>
<context>
    <name>KeysLostPage</name>
    <message>
        <source>The keys are not on this phone</source>
        <translation>As chaves não estão neste telefone</translation>
    </message>
    <message>
        <source>Units, jobs and records of the yard are here, but no key to sign with. So it is after a phone was restored from a backup: backups hold no keys, so that nobody else can sign with yours.</source>
        <translation>Equipamentos, trabalhos e registros do pátio estão aqui, mas não há chave para assinar. É assim depois que um telefone é restaurado de um backup: backups não guardam chaves, para que ninguém mais assine com as suas.</translation>
    </message>
    <message>
        <source>Nothing is lost: what was signed stays signed, and can be checked. With new keys you go on. The yard&apos;s list of who may sign then begins anew, with all who were on it, and other phones of the yard must accept it.</source>
        <translation>Nada se perde: o que foi assinado continua assinado e pode ser verificado. Com novas chaves você continua. A lista do pátio de quem pode assinar recomeça então, com todos que estavam nela, e os outros telefones do pátio precisam aceitá-la.</translation>
    </message>
    <message>
        <source>If the old phone was lost or stolen, its key can still sign. Have it revoked.</source>
        <translation>Se o telefone antigo foi perdido ou roubado, a chave dele ainda pode assinar. Peça que a revoguem.</translation>
    </message>
    <message>
        <source>Make new keys</source>
        <translation>Criar novas chaves</translation>
    </message>
    <message>
        <source>Open another yard</source>
        <translation>Abrir outro pátio</translation>
    </message>
</context>
<context>
    <name>LevelPage</name>
    <message>
        <source>The phone as a level</source>
        <translation>O celular como nível</translation>
    </message>
    <message>
        <source>A raised boom can come down.</source>
        <translation>Uma lança levantada pode cair.</translation>
    </message>
    <message>
        <source>Whoever is under it is crushed.</source>
        <translation>Quem estiver embaixo dela é esmagado.</translation>
    </message>
    <message>
        <source>Measure on a raised boom only with the engine off, the key removed, the boom support fitted, and nobody under it.</source>
        <translation>Meça em uma lança levantada só com o motor desligado, a chave retirada, o suporte da lança instalado e ninguém embaixo dela.</translation>
    </message>
    <message>
        <source>This phone has no accelerometer. Use an inclinometer and type what it shows.</source>
        <translation>Este celular não tem acelerômetro. Use um inclinômetro e digite o que ele mostra.</translation>
    </message>
    <message>
        <source>Slope along the phone&apos;s long side, as it lay first:</source>
        <translation>Inclinação ao longo do lado comprido do celular, como ele foi apoiado primeiro:</translation>
    </message>
    <message>
        <source>2. Turn the phone half round on the same spot, its top where its foot was. Hands off, then measure again.</source>
        <translation>2. Gire o celular meia-volta no mesmo ponto, o topo onde estava a base. Tire as mãos, depois meça de novo.</translation>
    </message>
    <message>
        <source>1. Lay the phone flat on the bucket floor, the boom or the ground, its long side along the machine. Hands off, then measure.</source>
        <translation>1. Apoie o celular plano no fundo da caçamba, na lança ou no chão, o lado comprido ao longo da máquina. Tire as mãos, depois meça.</translation>
    </message>
    <message>
        <source>Measuring: keep your hands off</source>
        <translation>Medindo: não toque nele</translation>
    </message>
    <message>
        <source>Measure</source>
        <translation>Medir</translation>
    </message>
    <message>
        <source>Begin again</source>
        <translation>Começar de novo</translation>
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
        <translation>Tara ajustada: de %1 a %2 %3, conhecida a ± %4 %3 (95 %).</translation>
    </message>
    <message>
        <source>Lift pressure</source>
        <translation>Pressão de elevação</translation>
    </message>
    <message>
        <source>Pressure in %1, over the boom&apos;s angle</source>
        <translation>Pressão em %1, pelo ângulo da lança</translation>
    </message>
    <message>
        <source>Pressure in %1, over the boom sensor&apos;s reading</source>
        <translation>Pressão em %1, pela leitura do sensor da lança</translation>
    </message>
    <message>
        <source>Chart of the lift pressure.</source>
        <translation>Gráfico da pressão de elevação.</translation>
    </message>
    <message>
        <source>This pass</source>
        <translation>Esta passada</translation>
    </message>
    <message>
        <source>Fitted tare</source>
        <translation>Tara ajustada</translation>
    </message>
    <message>
        <source>Where it lies with 95 % probability</source>
        <translation>Onde ela está com 95 % de probabilidade</translation>
    </message>
</context>
<context>
    <name>LiveBar</name>
    <message>
        <source>No readings are coming. They are waited for.</source>
        <translation>Nenhuma leitura está chegando. O app espera por elas.</translation>
    </message>
    <message>
        <source>Boom rising</source>
        <translation>Lança subindo</translation>
    </message>
    <message>
        <source>Boom lowering</source>
        <translation>Lança descendo</translation>
    </message>
    <message>
        <source>Standing still</source>
        <translation>Lança parada</translation>
    </message>
    <message>
        <source>Boom %1°</source>
        <translation>Lança %1°</translation>
    </message>
    <message>
        <source>wanted %1°</source>
        <translation>desejado %1°</translation>
    </message>
    <message>
        <source>%1 % done</source>
        <translation>%1 % feito</translation>
    </message>
    <message>
        <source>Practice: %1 It stays so until you say under Live readings that all is well, as if it had been mended.</source>
        <translation>Prática: %1 Continua assim até você dizer em “Leituras ao vivo” que está tudo bem, como se tivesse sido consertado.</translation>
    </message>
</context>
<context>
    <name>MachineView</name>
    <message>
        <source>Side view of the loader. Measure from A to B: %1</source>
        <translation>Vista lateral da carregadeira. Medir de A a B: %1</translation>
    </message>
    <message>
        <source>Side view of the loader, boom at %1 degrees</source>
        <translation>Vista lateral da carregadeira, lança a %1 graus</translation>
    </message>
    <message>
        <source>Side view of the loader</source>
        <translation>Vista lateral da carregadeira</translation>
    </message>
    <message>
        <source>%1 degrees wanted</source>
        <translation>Desejado: %1 graus</translation>
    </message>
    <message>
        <source>plausible, not its own pins</source>
        <translation>plausível, não são os pinos dela</translation>
    </message>
</context>
<context>
    <name>Main</name>
    <message>
        <source>Press to close this message</source>
        <translation>Toque para fechar esta mensagem</translation>
    </message>
</context>
<context>
    <name>MakeYardPage</name>
    <message>
        <source>Make my yard</source>
        <translation>Criar meu pátio</translation>
    </message>
    <message>
        <source>Your name</source>
        <translation>Seu nome</translation>
    </message>
    <message>
        <source>You are mostly</source>
        <translation>Na maior parte do tempo você é</translation>
    </message>
    <message>
        <source>Passphrase: 12 characters or more, a few words are best</source>
        <translation>Frase secreta: 12 caracteres ou mais, o melhor são algumas palavras</translation>
    </message>
    <message>
        <source>The same passphrase again</source>
        <translation>A mesma frase secreta de novo</translation>
    </message>
    <message>
        <source>This is not the same.</source>
        <translation>Não é a mesma.</translation>
    </message>
    <message>
        <source>It locks your signing key and the yard&apos;s key on this phone. Nobody can recover it: write it down and keep it where the office keeps its keys. Others can be added later, each with a key of their own.</source>
        <translation>Ela tranca sua chave de assinatura e a chave do pátio neste celular. Ninguém pode recuperá-la: anote-a e guarde-a onde o escritório guarda as chaves. Outras pessoas podem ser incluídas depois, cada uma com a própria chave de assinatura.</translation>
    </message>
    <message>
        <source>Make the keys and the yard</source>
        <translation>Criar as chaves e o pátio</translation>
    </message>
    <message>
        <source>Make new keys</source>
        <translation>Criar novas chaves</translation>
    </message>
    <message>
        <source>Make the new keys</source>
        <translation>Criar as novas chaves</translation>
    </message>
</context>
<context>
    <name>MonitorStep</name>
    <message>
        <source>In the monitor&apos;s own words, if you like</source>
        <translation>Nas palavras do monitor, se quiser</translation>
    </message>
</context>
<context>
    <name>MoveStep</name>
    <message>
        <source>Move the practice loader</source>
        <translation>Mover a carregadeira de prática</translation>
    </message>
    <message>
        <source>It does what the step asks; on a real machine your hands are on the levers</source>
        <translation>Ela faz o que a etapa pede; em uma máquina real, suas mãos estão nas alavancas</translation>
    </message>
    <message>
        <source>The pass is done</source>
        <translation>Passada feita</translation>
    </message>
    <message>
        <source>It stands there</source>
        <translation>Está na posição</translation>
    </message>
    <message>
        <source>Failed</source>
        <translation>Falhou</translation>
    </message>
    <message>
        <source>Boom at its lowest</source>
        <translation>Lança no ponto mais baixo</translation>
    </message>
    <message>
        <source>Boom at its highest</source>
        <translation>Lança no ponto mais alto</translation>
    </message>
    <message>
        <source>Boom level</source>
        <translation>Lança na horizontal</translation>
    </message>
    <message>
        <source>Boom at carry height</source>
        <translation>Lança na altura de transporte</translation>
    </message>
    <message>
        <source>Boom down, on the ground</source>
        <translation>Lança abaixada, no chão</translation>
    </message>
    <message>
        <source>bucket racked back</source>
        <translation>caçamba recolhida</translation>
    </message>
    <message>
        <source>bucket level</source>
        <translation>caçamba nivelada</translation>
    </message>
    <message>
        <source>bucket dumped</source>
        <translation>caçamba basculada</translation>
    </message>
    <message>
        <source>come from below</source>
        <translation>vindo de baixo</translation>
    </message>
    <message>
        <source>come from above</source>
        <translation>vindo de cima</translation>
    </message>
    <message>
        <source>Raise</source>
        <translation>Levante</translation>
    </message>
    <message>
        <source>Lower</source>
        <translation>Abaixe</translation>
    </message>
    <message>
        <source>slowly</source>
        <translation>devagar</translation>
    </message>
    <message>
        <source>fast</source>
        <translation>rápido</translation>
    </message>
    <message>
        <source>at your own pace</source>
        <translation>no seu ritmo</translation>
    </message>
    <message>
        <source>bucket empty</source>
        <translation>caçamba vazia</translation>
    </message>
    <message>
        <source>with the test mass</source>
        <translation>com a massa de teste</translation>
    </message>
    <message>
        <source>This pass needs a log: open live readings, or bring the log as a file.</source>
        <translation>Esta passada precisa de uma gravação: abra as leituras ao vivo, ou traga a gravação como arquivo.</translation>
    </message>
    <message>
        <source>Bring the log as a file</source>
        <translation>Trazer a gravação como arquivo</translation>
    </message>
    <message>
        <source>Practise with the simulated loader</source>
        <translation>Praticar com a carregadeira simulada</translation>
    </message>
    <message>
        <source>Lift logs (%1)</source>
        <translation>Gravações de elevação (%1)</translation>
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
        <translation>Nada a anotar</translation>
    </message>
    <message>
        <source>In your own words</source>
        <translation>Com suas palavras</translation>
    </message>
</context>
<context>
    <name>PeoplePage</name>
    <message>
        <source>People</source>
        <translation>Pessoas</translation>
    </message>
    <message>
        <source>May not sign any more</source>
        <translation>Não pode mais assinar</translation>
    </message>
    <message>
        <source>Key %1</source>
        <translation>Chave %1</translation>
    </message>
    <message>
        <source>Their name</source>
        <translation>Nome da pessoa</translation>
    </message>
    <message>
        <source>A passphrase of their own, 12 characters or more</source>
        <translation>Uma frase secreta própria, 12 caracteres ou mais</translation>
    </message>
    <message>
        <source>The yard&apos;s passphrase</source>
        <translation>A frase secreta do pátio</translation>
    </message>
    <message>
        <source>Add this person</source>
        <translation>Incluir esta pessoa</translation>
    </message>
    <message>
        <source>Add a person</source>
        <translation>Incluir uma pessoa</translation>
    </message>
    <message>
        <source>Add somebody on their own phone</source>
        <translation>Admitir alguém no próprio telefone</translation>
    </message>
    <message>
        <source>Signs on their own phone</source>
        <translation>Assina no próprio telefone</translation>
    </message>
</context>
<context>
    <name>Plot</name>
    <message>
        <source>Slow, lowering</source>
        <translation>Lenta, descendo</translation>
    </message>
    <message>
        <source>Fast, lowering</source>
        <translation>Rápida, descendo</translation>
    </message>
    <message>
        <source>Slow, raising</source>
        <translation>Lenta, subindo</translation>
    </message>
    <message>
        <source>Fast, raising</source>
        <translation>Rápida, subindo</translation>
    </message>
</context>
<context>
    <name>ProofChart</name>
    <message>
        <source>Reading %1: %2 %</source>
        <translation>Leitura %1: %2 %</translation>
    </message>
    <message>
        <source>outside</source>
        <translation>fora</translation>
    </message>
    <message>
        <source>Mean %1 %.</source>
        <translation>Média %1 %.</translation>
    </message>
    <message>
        <source>The mean may be off by %1 %.</source>
        <translation>A média pode desviar %1 %.</translation>
    </message>
    <message>
        <source>Errors of the proof</source>
        <translation>Erros da comprovação</translation>
    </message>
    <message>
        <source>Error in % of the known mass, over the number of the reading</source>
        <translation>Erro em % da massa conhecida, pelo número da leitura</translation>
    </message>
    <message>
        <source>Chart of the errors of the proof.</source>
        <translation>Gráfico dos erros da comprovação.</translation>
    </message>
    <message>
        <source>Within the tolerance</source>
        <translation>Dentro da tolerância</translation>
    </message>
    <message>
        <source>Outside</source>
        <translation>Fora</translation>
    </message>
    <message>
        <source>Mean</source>
        <translation>Média</translation>
    </message>
    <message>
        <source>Tolerance of the mean</source>
        <translation>Tolerância da média</translation>
    </message>
</context>
<context>
    <name>ReadingStep</name>
    <message>
        <source>steady</source>
        <translation>estável</translation>
    </message>
    <message>
        <source>not steady yet</source>
        <translation>ainda não estável</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>Inserir</translation>
    </message>
    <message>
        <source>Enter %1 %2</source>
        <translation>Inserir %1 %2</translation>
    </message>
    <message>
        <source>Typed: %1</source>
        <translation>Digitado: %1</translation>
    </message>
    <message>
        <source>Between %1 and %2</source>
        <translation>Entre %1 e %2</translation>
    </message>
    <message>
        <source>At least %1</source>
        <translation>No mínimo %1</translation>
    </message>
    <message>
        <source>At most %1</source>
        <translation>No máximo %1</translation>
    </message>
    <message>
        <source>Last time: %1</source>
        <translation>Da última vez: %1</translation>
    </message>
    <message>
        <source>Practice: the instrument shows %1</source>
        <translation>Prática: o instrumento mostra %1</translation>
    </message>
    <message>
        <source>Unit %1</source>
        <translation>Unidade %1</translation>
    </message>
    <message>
        <source>Take the live value</source>
        <translation>Usar o valor ao vivo</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>nothing comes yet</source>
        <translation>nada chega ainda</translation>
    </message>
    <message>
        <source>It is the known mass: %1</source>
        <translation>É a massa conhecida: %1</translation>
    </message>
    <message>
        <source>The app weighed %1 in this lift</source>
        <translation>O app pesou %1 nesta elevação</translation>
    </message>
    <message>
        <source>± %1. Take it where the machine itself takes no values</source>
        <translation>± %1. Use onde a própria máquina não aceita valores</translation>
    </message>
    <message>
        <source>Not measured</source>
        <translation>Não medido</translation>
    </message>
    <message>
        <source>In the picture: the slope of the line from A to B</source>
        <translation>Na imagem: a inclinação da linha de A a B</translation>
    </message>
    <message>
        <source>In the picture: from A to B</source>
        <translation>Na imagem: de A a B</translation>
    </message>
    <message>
        <source>The loader is a plausible one: its own pins are not known yet.</source>
        <translation>A carregadeira é uma plausível: os próprios pinos dela ainda não são conhecidos.</translation>
    </message>
    <message>
        <source>Take the phone&apos;s level: %1°</source>
        <translation>Usar o nível do celular: %1°</translation>
    </message>
    <message>
        <source>Measure with the phone as a level</source>
        <translation>Medir com o celular como nível</translation>
    </message>
    <message>
        <source>%1. Measured with the phone&apos;s top towards the bucket?</source>
        <translation>%1. Medido com o topo do celular virado para a caçamba?</translation>
    </message>
    <message>
        <source>Lay it with its top towards the bucket</source>
        <translation>Coloque-o com o topo virado para a caçamba</translation>
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
        <translation>Salvar como PDF</translation>
    </message>
    <message>
        <source>Save the sealed record itself</source>
        <translation>Salvar o próprio registro selado</translation>
    </message>
    <message>
        <source>Any program that knows JSON Web Signatures can check it</source>
        <translation>Qualquer programa que conheça JSON Web Signatures pode verificá-lo</translation>
    </message>
    <message>
        <source>Save the tag as a PDF</source>
        <translation>Salvar a etiqueta como PDF</translation>
    </message>
    <message>
        <source>Sign it too</source>
        <translation>Assinar também</translation>
    </message>
    <message>
        <source>A further signature, with your own key</source>
        <translation>Uma assinatura a mais, com sua própria chave</translation>
    </message>
    <message>
        <source>Correct it</source>
        <translation>Corrigir</translation>
    </message>
    <message>
        <source>By a new record that names this one; this one stays as it is</source>
        <translation>Por um novo registro que nomeia este; este fica como está</translation>
    </message>
    <message>
        <source>What was wrong, and what is right</source>
        <translation>O que estava errado, e o que é certo</translation>
    </message>
    <message>
        <source>Seal the correction</source>
        <translation>Selar a correção</translation>
    </message>
    <message>
        <source>Charts</source>
        <translation>Gráficos</translation>
    </message>
    <message>
        <source>Passes, what the fit leaves, errors of the proof</source>
        <translation>Passadas, o que o ajuste deixa, erros da comprovação</translation>
    </message>
    <message>
        <source>Calibration certificate</source>
        <translation>Certificado de calibração</translation>
    </message>
    <message>
        <source>To print, or for programs</source>
        <translation>Para imprimir, ou para programas</translation>
    </message>
    <message>
        <source>Where it stands</source>
        <translation>Como está</translation>
    </message>
</context>
<context>
    <name>ResidualChart</name>
    <message>
        <source>bucket empty</source>
        <translation>caçamba vazia</translation>
    </message>
    <message>
        <source>with the test mass</source>
        <translation>com a massa de teste</translation>
    </message>
    <message>
        <source>with a load</source>
        <translation>com uma carga</translation>
    </message>
    <message>
        <source>Standard deviation %1 %2, largest %3 %2</source>
        <translation>Desvio-padrão %1 %2, maior %3 %2</translation>
    </message>
    <message>
        <source>What the fit leaves</source>
        <translation>O que o ajuste deixa</translation>
    </message>
    <message>
        <source>Measured less fitted, in %1, over the boom&apos;s angle; the chosen pass is drawn thick</source>
        <translation>Medido menos ajustado, em %1, pelo ângulo da lança; a passada escolhida tem traço grosso</translation>
    </message>
    <message>
        <source>Chart of what the fit leaves.</source>
        <translation>Gráfico do que o ajuste deixa.</translation>
    </message>
</context>
<context>
    <name>ResumeStep</name>
    <message>
        <source>Go on</source>
        <translation>Continuar</translation>
    </message>
    <message>
        <source>Take the job over as %1</source>
        <translation>Assumir o serviço como %1</translation>
    </message>
    <message>
        <source>The job was interrupted</source>
        <translation>O serviço foi interrompido</translation>
    </message>
    <message>
        <source>Everything that was done is kept. Before you go on: is the machine as you left it, and is nobody near it? Cautions that still hold are shown again, and &quot;the zone is clear&quot; is asked for again.</source>
        <translation>Tudo o que foi feito está guardado. Antes de continuar: a máquina está como você a deixou, e não há ninguém perto dela? Os avisos de segurança que ainda valem são mostrados de novo, e o toque de “zona livre” é pedido de novo.</translation>
    </message>
    <message>
        <source>Somebody else</source>
        <translation>Outra pessoa</translation>
    </message>
    <message>
        <source>%1 is in charge.</source>
        <translation>Responsável: %1.</translation>
    </message>
    <message>
        <source>They go on with it. What you confirm as a second person you then confirm beside them, with your own passphrase.</source>
        <translation>Essa pessoa continua. O que você confirma como segunda pessoa, confirma então ao lado dela, com sua própria frase secreta.</translation>
    </message>
</context>
<context>
    <name>SavedFile</name>
    <message>
        <source>Saved: %1</source>
        <translation>Salvo: %1</translation>
    </message>
    <message>
        <source>Hand the file to another app</source>
        <translation>Passar o arquivo para outro app</translation>
    </message>
    <message>
        <source>Hand the file to</source>
        <translation>Passar o arquivo para</translation>
    </message>
</context>
<context>
    <name>ScanView</name>
    <message>
        <source>This device has no camera. Choose a picture of the code.</source>
        <translation>Este aparelho não tem câmera. Escolha uma foto do código.</translation>
    </message>
    <message>
        <source>The phone does not let the app use its camera. Allow it in the phone&apos;s settings, or choose a picture.</source>
        <translation>O telefone não deixa o app usar a câmera. Permita nas configurações do telefone ou escolha uma imagem.</translation>
    </message>
    <message>
        <source>There is no code in this picture. Take it from nearer and straight from the front, the whole code in it.</source>
        <translation>Não há código nesta foto. Tire-a de mais perto e bem de frente, com o código inteiro.</translation>
    </message>
    <message>
        <source>Choose a picture of the code</source>
        <translation>Escolher uma foto do código</translation>
    </message>
    <message>
        <source>Pictures (%1)</source>
        <translation>Imagens (%1)</translation>
    </message>
</context>
<context>
    <name>SettingsPage</name>
    <message>
        <source>Settings</source>
        <translation>Configurações</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Aparência</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Dia</translation>
    </message>
    <message>
        <source>Night</source>
        <translation>Noite</translation>
    </message>
    <message>
        <source>Sunlight</source>
        <translation>Sol</translation>
    </message>
    <message>
        <source>Black on white, thick lines</source>
        <translation>Preto no branco, linhas grossas</translation>
    </message>
    <message>
        <source>Text size</source>
        <translation>Tamanho do texto</translation>
    </message>
    <message>
        <source>Gloves: larger keys</source>
        <translation>Luvas: teclas maiores</translation>
    </message>
    <message>
        <source>Wet glass: hold a key for it to count</source>
        <translation>Tela molhada: segurar a tecla para valer</translation>
    </message>
    <message>
        <source>Sounds and vibration</source>
        <translation>Sons e vibração</translation>
    </message>
    <message>
        <source>Speak the instructions</source>
        <translation>Falar as instruções</translation>
    </message>
    <message>
        <source>Speak the instructions (this phone has no voice in this language)</source>
        <translation>Falar as instruções (este celular não tem voz neste idioma)</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Unidades</translation>
    </message>
    <message>
        <source>Metric: kg, bar, °C, m</source>
        <translation>Métrico: kg, bar, °C, m</translation>
    </message>
    <message>
        <source>US: lb, psi, °F, in</source>
        <translation>EUA: lb, psi, °F, in</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Idioma</translation>
    </message>
    <message>
        <source>This translation was made by a machine. A native speaker who knows the trade has still to review it.</source>
        <translation>Esta tradução foi feita por máquina. Um falante nativo que conheça o ofício ainda precisa revisá-la.</translation>
    </message>
    <message>
        <source>You act as</source>
        <translation>Você atua como</translation>
    </message>
    <message>
        <source>People who may sign on this phone</source>
        <translation>Pessoas que podem assinar neste celular</translation>
    </message>
    <message>
        <source>Live readings</source>
        <translation>Leituras ao vivo</translation>
    </message>
    <message>
        <source>The phone as a level</source>
        <translation>O celular como nível</translation>
    </message>
    <message>
        <source>Lock</source>
        <translation>Trancar o app</translation>
    </message>
    <message>
        <source>The next person opens it with their own key</source>
        <translation>A próxima pessoa o abre com a própria chave de assinatura</translation>
    </message>
    <message>
        <source>Hingepin %1. The app is free software under the GNU General Public License, version 3 or later; its engine under the Apache License 2.0. It never writes to a machine. A verdict here does not make a scale legal for trade; that needs the authority in charge.</source>
        <translation>Hingepin %1. O aplicativo é software livre sob a GNU General Public License, versão 3 ou posterior; seu núcleo, sob a Apache License 2.0. Ele nunca grava nada em uma máquina. Um resultado daqui não torna uma balança legal para uso comercial; para isso é preciso a autoridade competente.</translation>
    </message>
    <message>
        <source>Save the app&apos;s log</source>
        <translation>Salvar o registro do aplicativo</translation>
    </message>
    <message>
        <source>What it did and what failed, without names: for whoever looks into a fault</source>
        <translation>O que fez e o que falhou, sem nomes: para quem investiga uma falha</translation>
    </message>
    <message>
        <source>Exchange with the office</source>
        <translation>Troca com o escritório</translation>
    </message>
    <message>
        <source>Where records are sent to, and what still waits</source>
        <translation>Para onde vão os registros e o que ainda espera</translation>
    </message>
    <message>
        <source>How proofs are judged in this yard</source>
        <translation>Como as comprovações são julgadas neste pátio</translation>
    </message>
    <message>
        <source>Tolerance and decision rule, where a unit does not say otherwise</source>
        <translation>Tolerância e regra de decisão, onde um equipamento não diz outra coisa</translation>
    </message>
</context>
<context>
    <name>SignStep</name>
    <message>
        <source>Sign</source>
        <translation>Assinar</translation>
    </message>
    <message>
        <source>Clear the glass</source>
        <translation>Limpar a assinatura</translation>
    </message>
    <message>
        <source>Absent</source>
        <translation>Ausente</translation>
    </message>
    <message>
        <source>Refused</source>
        <translation>Recusou</translation>
    </message>
    <message>
        <source>You sign as %1, %2, with your key on this phone.</source>
        <translation>Você assina como %1, %2, com sua chave neste celular.</translation>
    </message>
</context>
<context>
    <name>SignaturePad</name>
    <message>
        <source>Sign here with a finger</source>
        <translation>Assine aqui com um dedo</translation>
    </message>
</context>
<context>
    <name>StateMark</name>
    <message>
        <source>ready</source>
        <translation>pronto</translation>
    </message>
    <message>
        <source>due soon</source>
        <translation>vence em breve</translation>
    </message>
    <message>
        <source>due</source>
        <translation>vencido</translation>
    </message>
    <message>
        <source>restricted</source>
        <translation>com restrição</translation>
    </message>
    <message>
        <source>do not use</source>
        <translation>não use</translation>
    </message>
    <message>
        <source>not calibrated</source>
        <translation>não calibrado</translation>
    </message>
</context>
<context>
    <name>SyncPage</name>
    <message>
        <source>Exchange with the office</source>
        <translation>Troca com o escritório</translation>
    </message>
    <message>
        <source>Records, signatures and photos go to a place of the yard&apos;s own and come from there to every phone. What arrives is verified before it counts.</source>
        <translation>Registros, assinaturas e fotos vão para um lugar do próprio pátio e de lá chegam a cada telefone. O que chega é verificado antes de valer.</translation>
    </message>
    <message>
        <source>The password is not kept for you on this phone. Enter it once.</source>
        <translation>A senha não está guardada para você neste telefone. Digite-a uma vez.</translation>
    </message>
    <message>
        <source>Kind of place</source>
        <translation>Tipo de lugar</translation>
    </message>
    <message>
        <source>Share (WebDAV)</source>
        <translation>Compartilhamento (WebDAV)</translation>
    </message>
    <message>
        <source>Object storage (S3)</source>
        <translation>Armazenamento de objetos (S3)</translation>
    </message>
    <message>
        <source>Address, beginning with https://</source>
        <translation>Endereço, começa com https://</translation>
    </message>
    <message>
        <source>Bucket</source>
        <translation>Bucket</translation>
    </message>
    <message>
        <source>Region</source>
        <translation>Região</translation>
    </message>
    <message>
        <source>Id of the access key</source>
        <translation>Identificador da chave de acesso</translation>
    </message>
    <message>
        <source>User name</source>
        <translation>Nome de usuário</translation>
    </message>
    <message>
        <source>Secret key</source>
        <translation>Chave secreta</translation>
    </message>
    <message>
        <source>Password of the share</source>
        <translation>Senha do compartilhamento</translation>
    </message>
    <message>
        <source>By itself, when there is a network</source>
        <translation>Sozinho, quando houver rede</translation>
    </message>
    <message>
        <source>Also over a network that is paid for by what it carries</source>
        <translation>Também por uma rede paga pelo que transporta</translation>
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
        <translation>e mais %1</translation>
    </message>
    <message>
        <source>Arrived and not believed</source>
        <translation>Chegou e não foi aceito</translation>
    </message>
    <message>
        <source>Keep this place</source>
        <translation>Guardar este lugar</translation>
    </message>
    <message>
        <source>Send and fetch now</source>
        <translation>Enviar e buscar agora</translation>
    </message>
    <message>
        <source>Stop for now</source>
        <translation>Parar por agora</translation>
    </message>
    <message>
        <source>It goes on from here the next time</source>
        <translation>Na próxima vez continua daqui</translation>
    </message>
    <message>
        <source>Change the place</source>
        <translation>Mudar o lugar</translation>
    </message>
    <message>
        <source>Set up the place</source>
        <translation>Configurar o lugar</translation>
    </message>
    <message>
        <source>Certificate of the share&apos;s own authority</source>
        <translation>Certificado da autoridade própria do compartilhamento</translation>
    </message>
    <message>
        <source>Chosen: %1</source>
        <translation>Escolhido: %1</translation>
    </message>
    <message>
        <source>Only where the yard made its certificate itself: choose the file (PEM) that whoever runs the share gives out</source>
        <translation>Só se o próprio pátio emitiu o certificado: escolha o arquivo (PEM) fornecido por quem administra o compartilhamento</translation>
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
        <translation>Salvar a etiqueta como PDF</translation>
    </message>
    <message>
        <source>The tag hangs on the machine</source>
        <translation>A etiqueta está pendurada na máquina</translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation>Salvo: %1</translation>
    </message>
</context>
<context>
    <name>TermsPage</name>
    <message>
        <source>How proofs of %1 are judged</source>
        <translation>Como as comprovações de %1 são julgadas</translation>
    </message>
    <message>
        <source>How proofs are judged in this yard</source>
        <translation>Como as comprovações são julgadas neste pátio</translation>
    </message>
    <message>
        <source>Jobs that begin from now on are judged by it. What is left open here the yard says.</source>
        <translation>Os trabalhos que começarem a partir de agora são julgados por ela. O que ficar em aberto aqui o pátio diz.</translation>
    </message>
    <message>
        <source>Jobs that begin from now on are judged by it, unless the unit itself says otherwise.</source>
        <translation>Os trabalhos que começarem a partir de agora são julgados por ela, salvo se o próprio equipamento disser outra coisa.</translation>
    </message>
    <message>
        <source>Tolerance</source>
        <translation>Tolerância</translation>
    </message>
    <message>
        <source>As the yard says</source>
        <translation>Como o pátio diz</translation>
    </message>
    <message>
        <source>As each procedure says</source>
        <translation>Como cada procedimento diz</translation>
    </message>
    <message>
        <source>A percentage of the load</source>
        <translation>Uma porcentagem da carga</translation>
    </message>
    <message>
        <source>A class of OIML R 76</source>
        <translation>Uma classe da OIML R 76</translation>
    </message>
    <message>
        <source>Scales that weigh at rest</source>
        <translation>Balanças que pesam em repouso</translation>
    </message>
    <message>
        <source>A class of OIML R 51, category Y</source>
        <translation>Uma classe da OIML R 51, categoria Y</translation>
    </message>
    <message>
        <source>Scales that weigh each load by themselves</source>
        <translation>Balanças que pesam cada carga sozinhas</translation>
    </message>
    <message>
        <source>A class of NIST Handbook 44, 2.20</source>
        <translation>Uma classe do NIST Handbook 44, 2.20</translation>
    </message>
    <message>
        <source>Scales in the United States</source>
        <translation>Balanças nos Estados Unidos</translation>
    </message>
    <message>
        <source>Steps of our own</source>
        <translation>Degraus próprios</translation>
    </message>
    <message>
        <source>Largest error, up or down, %</source>
        <translation>Maior erro, para mais ou para menos, %</translation>
    </message>
    <message>
        <source>Per cent of</source>
        <translation>Por cento de</translation>
    </message>
    <message>
        <source>The mass that is lifted</source>
        <translation>A massa levantada</translation>
    </message>
    <message>
        <source>The rated payload</source>
        <translation>A carga útil nominal</translation>
    </message>
    <message>
        <source>Class</source>
        <translation>Classe</translation>
    </message>
    <message>
        <source>Scale division d, %1</source>
        <translation>Divisão d, %1</translation>
    </message>
    <message>
        <source>Verification interval e, %1</source>
        <translation>Divisão de verificação e, %1</translation>
    </message>
    <message>
        <source>Which limits</source>
        <translation>Quais limites</translation>
    </message>
    <message>
        <source>Acceptance: new or just repaired</source>
        <translation>De aceitação: nova ou recém-consertada</translation>
    </message>
    <message>
        <source>Maintenance: in use</source>
        <translation>De manutenção: em uso</translation>
    </message>
    <message>
        <source>Initial: new or just repaired</source>
        <translation>Inicial: nova ou recém-consertada</translation>
    </message>
    <message>
        <source>In service</source>
        <translation>Em serviço</translation>
    </message>
    <message>
        <source>Loads up to, %1</source>
        <translation>Cargas até, %1</translation>
    </message>
    <message>
        <source>Largest error there, %1</source>
        <translation>Maior erro ali, %1</translation>
    </message>
    <message>
        <source>Remove this step</source>
        <translation>Remover este degrau</translation>
    </message>
    <message>
        <source>One more step</source>
        <translation>Mais um degrau</translation>
    </message>
    <message>
        <source>When is it passed?</source>
        <translation>Quando é aprovada?</translation>
    </message>
    <message>
        <source>When its error is within the limit</source>
        <translation>Quando o erro está dentro do limite</translation>
    </message>
    <message>
        <source>Near the limit a wrong verdict is about as likely as a right one</source>
        <translation>Perto do limite um veredito errado é quase tão provável quanto um certo</translation>
    </message>
    <message>
        <source>When it is plain that its error is within the limit</source>
        <translation>Quando é certo que o erro está dentro do limite</translation>
    </message>
    <message>
        <source>The doubt of the proof counts against the scale</source>
        <translation>A dúvida da comprovação conta contra a balança</translation>
    </message>
    <message>
        <source>How sure, %</source>
        <translation>Com que certeza, %</translation>
    </message>
    <message>
        <source>A verdict by any of these does not make a scale legal for trade. That needs the authority in charge.</source>
        <translation>Nenhum veredito por estas regras torna uma balança legal para o comércio. Para isso é preciso a autoridade responsável.</translation>
    </message>
    <message>
        <source>Nothing was saved: see above.</source>
        <translation>Nada foi salvo: veja acima.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Salvar</translation>
    </message>
</context>
<context>
    <name>UnitEditPage</name>
    <message>
        <source>The machine&apos;s own routine</source>
        <translation>A rotina própria da máquina</translation>
    </message>
    <message>
        <source>Readings typed from its monitor</source>
        <translation>Leituras digitadas a partir do monitor</translation>
    </message>
    <message>
        <source>Logs or a live feed</source>
        <translation>Gravações ou leituras ao vivo</translation>
    </message>
    <message>
        <source>Edit %1</source>
        <translation>Editar %1</translation>
    </message>
    <message>
        <source>New unit</source>
        <translation>Novo equipamento</translation>
    </message>
    <message>
        <source>Number or name of the unit</source>
        <translation>Número ou nome do equipamento</translation>
    </message>
    <message>
        <source>Rated payload, kg</source>
        <translation>Carga útil nominal, kg</translation>
    </message>
    <message>
        <source>Lift cylinders, how many</source>
        <translation>Cilindros de elevação, quantos</translation>
    </message>
    <message>
        <source>Lift cylinder bore, mm</source>
        <translation>Diâmetro interno do cilindro de elevação, mm</translation>
    </message>
    <message>
        <source>Lift cylinder rod, mm</source>
        <translation>Haste do cilindro de elevação, mm</translation>
    </message>
    <message>
        <source>Weigh window from boom angle, degrees (if known)</source>
        <translation>Janela de pesagem a partir do ângulo da lança, graus (se conhecido)</translation>
    </message>
    <message>
        <source>Weigh window to boom angle, degrees (if known)</source>
        <translation>Janela de pesagem até o ângulo da lança, graus (se conhecido)</translation>
    </message>
    <message>
        <source>Oil at least, °C, before pressures are taught (if the manual says)</source>
        <translation>Óleo no mínimo, °C, antes de ensinar as pressões (se o manual disser)</translation>
    </message>
    <message>
        <source>Test mass of the yard, kg (if there is one)</source>
        <translation>Massa de teste do pátio, kg (se houver)</translation>
    </message>
    <message>
        <source>Due again after, hours (if the yard says)</source>
        <translation>Vence de novo após, horas (se o pátio disser)</translation>
    </message>
    <message>
        <source>It can be taught by</source>
        <translation>Pode ser ensinado por</translation>
    </message>
    <message>
        <source>Its monitor shows</source>
        <translation>O monitor dele mostra</translation>
    </message>
    <message>
        <source>Press the unit in which it shows it; press it again if it does not show it at all. Mind which ton it is.</source>
        <translation>Toque na unidade em que ele mostra; toque de novo nela se ele não mostrar isso. Atenção a qual tonelada é.</translation>
    </message>
    <message>
        <source>For practice: an invented machine</source>
        <translation>Para prática: uma máquina inventada</translation>
    </message>
    <message>
        <source>Its records say so; the simulated loader may stand in for it</source>
        <translation>Os registros dela dizem isso; a carregadeira simulada pode ficar no lugar dela</translation>
    </message>
    <message>
        <source>Linkage</source>
        <translation>Mecanismo</translation>
    </message>
    <message>
        <source>Its pins are on file: empty passes are enough to calibrate.</source>
        <translation>Os pinos dele estão em arquivo: passadas vazias bastam para calibrar.</translation>
    </message>
    <message>
        <source>Its pins are not known. It can be calibrated with a known mass all the same.</source>
        <translation>Os pinos dele não são conhecidos. Mesmo assim, é possível calibrar com uma massa conhecida.</translation>
    </message>
    <message>
        <source>Read the pins from a file</source>
        <translation>Ler os pinos de um arquivo</translation>
    </message>
    <message>
        <source>Unit or job files (%1)</source>
        <translation>Arquivos de equipamento ou de serviço (%1)</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Salvar</translation>
    </message>
</context>
<context>
    <name>UnitPage</name>
    <message>
        <source>With %1</source>
        <translation>Com %1</translation>
    </message>
    <message>
        <source>Due again %1</source>
        <translation>Vence de novo: %1</translation>
    </message>
    <message>
        <source>Save its label as a PDF</source>
        <translation>Salvar o adesivo como PDF</translation>
    </message>
    <message>
        <source>Begin a job</source>
        <translation>Começar um serviço</translation>
    </message>
    <message>
        <source>Edit the unit</source>
        <translation>Editar o equipamento</translation>
    </message>
    <message>
        <source>Attachments</source>
        <translation>Implementos</translation>
    </message>
    <message>
        <source>Compare check-out and return</source>
        <translation>Comparar saída e devolução</translation>
    </message>
    <message>
        <source>Records</source>
        <translation>Registros</translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation>Nenhum ainda.</translation>
    </message>
    <message>
        <source>not trusted</source>
        <translation>não confiável</translation>
    </message>
    <message>
        <source>corrected</source>
        <translation>corrigido</translation>
    </message>
    <message>
        <source>Its zero and span over the months</source>
        <translation>Seu zero e sua amplitude ao longo dos meses</translation>
    </message>
    <message>
        <source>Stops: what to set</source>
        <translation>Paradas: o que ajustar</translation>
    </message>
    <message>
        <source>A disputed load: what was it worth?</source>
        <translation>Uma carga contestada: quanto valia?</translation>
    </message>
    <message>
        <source>Something happened to it</source>
        <translation>Aconteceu algo com ela</translation>
    </message>
    <message>
        <source>Repaired, welded, overloaded, battery lost: the scale is due again</source>
        <translation>Consertada, soldada, sobrecarregada, sem bateria: a balança vence de novo</translation>
    </message>
    <message>
        <source>How its proofs are judged</source>
        <translation>Como suas comprovações são julgadas</translation>
    </message>
    <message>
        <source>Survey its linkage</source>
        <translation>Medir o mecanismo dela</translation>
    </message>
    <message>
        <source>Its pins are not on file: a tape and an inclinometer find them, and its scale weighs more surely</source>
        <translation>Os pinos dela não estão registrados: uma trena e um inclinômetro os encontram, e a balança pesa com mais segurança</translation>
    </message>
</context>
<context>
    <name>UnlockPage</name>
    <message>
        <source>Demo yard: who are you?</source>
        <translation>Pátio de demonstração: quem é você?</translation>
    </message>
    <message>
        <source>Who is at the phone?</source>
        <translation>Quem está com o celular?</translation>
    </message>
    <message>
        <source>Passphrase</source>
        <translation>Frase secreta</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Abrir</translation>
    </message>
    <message>
        <source>Another yard</source>
        <translation>Outro pátio</translation>
    </message>
    <message>
        <source>All of them are invented. Choose whom you want to be.</source>
        <translation>Todas são inventadas. Escolha quem você quer ser.</translation>
    </message>
    <message>
        <source>Choose your name.</source>
        <translation>Escolha o seu nome.</translation>
    </message>
</context>
<context>
    <name>WaitStep</name>
    <message>
        <source>Compute again</source>
        <translation>Calcular de novo</translation>
    </message>
</context>
<context>
    <name>ZoneStep</name>
    <message>
        <source>Hold: the zone is clear</source>
        <translation>Segure: zona livre</translation>
    </message>
    <message>
        <source>The machine moves next. Nobody near it, nobody under the boom, everybody in sight.</source>
        <translation>A máquina se move em seguida. Ninguém perto dela, ninguém embaixo da lança, todos à vista.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile</name>
    <message>
        <source>read</source>
        <translation>lido</translation>
    </message>
    <message>
        <source>zone clear</source>
        <translation>zona livre</translation>
    </message>
    <message>
        <source>gone back to do it again</source>
        <translation>voltou para refazer</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>sim</translation>
    </message>
    <message>
        <source>no</source>
        <translation>não</translation>
    </message>
    <message>
        <source>done</source>
        <translation>feito</translation>
    </message>
    <message>
        <source>did not work</source>
        <translation>falhou</translation>
    </message>
    <message>
        <source>photo or file kept</source>
        <translation>foto ou arquivo guardado</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>omitido</translation>
    </message>
    <message>
        <source>signed</source>
        <translation>assinado</translation>
    </message>
    <message>
        <source>not there to sign</source>
        <translation>ausente</translation>
    </message>
    <message>
        <source>refused to sign</source>
        <translation>recusou</translation>
    </message>
    <message>
        <source>nobody there to confirm</source>
        <translation>ninguém presente para confirmar</translation>
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
        <translation>Responsável pela segurança</translation>
    </message>
    <message>
        <source>Yard checker</source>
        <translation>Conferente do pátio</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>Cliente</translation>
    </message>
    <message>
        <source>DANGER</source>
        <translation>PERIGO</translation>
    </message>
    <message>
        <source>WARNING</source>
        <translation>ADVERTÊNCIA</translation>
    </message>
    <message>
        <source>CAUTION</source>
        <translation>CUIDADO</translation>
    </message>
    <message>
        <source>NOTICE</source>
        <translation>AVISO</translation>
    </message>
    <message>
        <source>Last time the app ended in a fault of its own. What was answered is kept: a job opens where it was. Under Settings you can save the log for whoever looks into it.</source>
        <translation>Da última vez, o aplicativo terminou por uma falha própria. O que foi respondido está guardado: um trabalho abre onde estava. Em Configurações você pode salvar o registro para quem for investigar.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Joiner</name>
    <message>
        <source>You are let in. The yard&apos;s lists did not fit in the code: they come with the next exchange, or as a file. Until then you can&apos;t sign on this phone.</source>
        <translation>Você foi admitido. As listas do pátio não cabiam no código: elas vêm com a próxima troca, ou como arquivo. Até lá, você não pode assinar neste telefone.</translation>
    </message>
    <message>
        <source>The yard&apos;s key is not on this phone. Let people in on the phone on which the yard was made.</source>
        <translation>A chave do pátio não está neste telefone. Admita as pessoas no telefone em que o pátio foi criado.</translation>
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
        <translation>Não é possível abrir %1: %2</translation>
    </message>
    <message>
        <source>The simulated loader is for practice units only.</source>
        <translation>A carregadeira simulada é só para equipamentos de prática.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Photos</name>
    <message>
        <source>Practice picture, invented</source>
        <translation>Imagem de prática, inventada</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Profiles</name>
    <message>
        <source>This file holds no linkage. A unit&apos;s profile, a calibration job, or the linkage alone is needed.</source>
        <translation>Este arquivo não contém um mecanismo. É preciso o perfil de um equipamento, um serviço de calibração, ou só o mecanismo.</translation>
    </message>
    <message>
        <source>Mass on the scale</source>
        <translation>Massa na balança</translation>
    </message>
    <message>
        <source>Boom angle</source>
        <translation>Ângulo da lança</translation>
    </message>
    <message>
        <source>Boom sensor</source>
        <translation>Sensor da lança</translation>
    </message>
    <message>
        <source>Bucket sensor</source>
        <translation>Sensor da caçamba</translation>
    </message>
    <message>
        <source>Lift pressure, head side</source>
        <translation>Pressão de elevação, lado do êmbolo</translation>
    </message>
    <message>
        <source>Lift pressure, rod side</source>
        <translation>Pressão de elevação, lado da haste</translation>
    </message>
    <message>
        <source>Oil temperature</source>
        <translation>Temperatura do óleo</translation>
    </message>
    <message>
        <source>Operating hours</source>
        <translation>Horas de operação</translation>
    </message>
    <message>
        <source>Fuel level</source>
        <translation>Nível de combustível</translation>
    </message>
    <message>
        <source>counts</source>
        <translation>contagens</translation>
    </message>
    <message>
        <source>Choose a class.</source>
        <translation>Escolha uma classe.</translation>
    </message>
    <message>
        <source>Type a number from 50 to 99.99.</source>
        <translation>Digite um número de 50 a 99,99.</translation>
    </message>
    <message>
        <source>Type a number.</source>
        <translation>Digite um número.</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Syncer</name>
    <message>
        <source>You begin each exchange yourself.</source>
        <translation>Você inicia cada troca.</translation>
    </message>
    <message>
        <source>No network now.</source>
        <translation>Sem rede agora.</translation>
    </message>
    <message>
        <source>This network is paid for by what it carries.</source>
        <translation>Esta rede é paga pelo que transporta.</translation>
    </message>
    <message>
        <source>Record or signature</source>
        <translation>Registro ou assinatura</translation>
    </message>
    <message>
        <source>List of who may sign</source>
        <translation>Lista de quem pode assinar</translation>
    </message>
    <message>
        <source>Photo, log or other evidence</source>
        <translation>Foto, log ou outra evidência</translation>
    </message>
    <message>
        <source>A person&apos;s name or photo</source>
        <translation>Nome ou foto de uma pessoa</translation>
    </message>
    <message>
        <source>%1 of %2 parcels sent, %3 received; %4 records new here; evidence: %5 sent, %6 received</source>
        <translation>%1 de %2 pacotes enviados, %3 recebidos; %4 registros novos aqui; evidências: %5 enviadas, %6 recebidas</translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Yard</name>
    <message>
        <source>on their own phone</source>
        <translation>no próprio telefone</translation>
    </message>
</context>
</TS>

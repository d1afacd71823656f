/** A rotation worked out on the server: its lines as they come. Ending the request is the cancel. */
import { problemSchema, workLineSchema, type WorkLine, type WorkOut } from '@pitlamp/contract'

const NO_SERVER = 'The server does not answer. The plan is as it was; try again when it is back.'
const UNREADABLE =
  'The answer makes no sense to this version of the screen. Reload it and try again.'

interface Listening {
  readonly signal: AbortSignal
  readonly online: (line: WorkLine) => void
}

/** Resolves once there is no more to come, with a sentence where something went wrong. */
export async function askWork(
  meeting: string,
  asked: WorkOut,
  { signal, online }: Listening,
): Promise<string | undefined> {
  try {
    const answer = await fetch(`/api/meetings/${meeting}/work`, {
      ...{ method: 'POST', signal, body: JSON.stringify(asked) },
      headers: { 'content-type': 'application/json' },
    })
    if (!answer.ok || !answer.body) return await refusal(answer)
    return (await readLines(answer.body, online)) ? undefined : UNREADABLE
  } catch {
    return signal.aborted ? undefined : NO_SERVER
  }
}

async function refusal(answer: Response): Promise<string> {
  const problem = problemSchema.safeParse(await answer.json().catch(() => undefined)).data
  if (!problem) return NO_SERVER
  return problem.detail === undefined ? problem.title : `${problem.title} ${problem.detail}`
}

/** Whether every line could be read. */
async function readLines(
  body: ReadableStream<Uint8Array>,
  online: (line: WorkLine) => void,
): Promise<boolean> {
  const reader = body.getReader()
  const decoder = new TextDecoder()
  let rest = ''
  for (;;) {
    const { value, done } = await reader.read()
    if (done) return rest === ''
    const lines = (rest + decoder.decode(value, { stream: true })).split('\n')
    rest = lines.pop() ?? ''
    for (const text of lines) {
      const line = workLineSchema.safeParse(JSON.parse(text)).data
      if (!line) return false
      online(line)
    }
  }
}

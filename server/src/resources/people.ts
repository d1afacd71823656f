import { peopleSchema, personSchema } from '@pitlamp/contract'
import { holderIn, type Resource } from './guarded.ts'
import { responses } from './problems.ts'

/** The team's people, the same in every meeting. Sent again with another name, a person is renamed. */
export const peopleRoutes: Resource = (app, { storage }) => {
  const list = { response: responses(peopleSchema) }
  app.get('/people', { schema: list, config: { asks: { do: 'read' } } }, async (request) => {
    return { people: [...(await storage.read.people(holderIn(request).team.id))] }
  })

  const save = { body: personSchema, response: responses(personSchema) }
  app.post('/people', { schema: save, config: { asks: { do: 'saveDraft' } } }, async (request) => {
    const team = holderIn(request).team.id
    return (await storage.run('savePerson', { team, person: request.body })).person
  })
}

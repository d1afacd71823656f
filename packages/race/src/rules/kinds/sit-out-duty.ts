import { asked, choice, count, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** What a segment without a lane obliges the team to. */
export const sitOutDuty = ruleKind('sitOutDuty', {
  obliges: asked(choice('marshalAllPosts', 'marshalSomePosts', 'rest')),
  posts: maybe(asked(count)),
})
